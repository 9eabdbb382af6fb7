import type { PointPx } from '../store/view.ts';

export interface RectPx {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const distance = (a: PointPx, b: PointPx): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The rectangle between two corners. */
export function rectBetween(a: PointPx, b: PointPx): RectPx {
  return {
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  };
}

export function isInside(point: PointPx, rect: RectPx, margin = 0): boolean {
  return (
    point.x >= rect.x - margin &&
    point.x <= rect.x + rect.width + margin &&
    point.y >= rect.y - margin &&
    point.y <= rect.y + rect.height + margin
  );
}

/** The point of segment a–b nearest to `at`, and how far along it that is, 0..1. */
export function nearestOnSegment(at: PointPx, a: PointPx, b: PointPx): { readonly point: PointPx; readonly t: number } {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - a.x) * dx + (at.y - a.y) * dy) / squared));
  return { point: { x: a.x + t * dx, y: a.y + t * dy }, t };
}

/** The segment of a polyline nearest to `at`: its index, the place along it and the distance, or null for no segment. */
export function nearestSegment(
  at: PointPx,
  points: readonly PointPx[],
): { readonly index: number; readonly t: number; readonly distance: number } | null {
  let best: { index: number; t: number; distance: number } | null = null;
  for (let index = 0; index + 1 < points.length; index++) {
    const [a, b] = [points[index], points[index + 1]];
    if (!a || !b) continue;
    const { point, t } = nearestOnSegment(at, a, b);
    const away = distance(at, point);
    if (!best || away < best.distance) best = { index, t, distance: away };
  }
  return best;
}

/** The entry nearest to `at` within `reach` px, or null. */
export function nearest<T extends { readonly at: PointPx }>(
  at: PointPx,
  entries: readonly T[],
  reach: number,
): T | null {
  let best: T | null = null;
  let bestDistance = reach;
  for (const entry of entries) {
    const away = distance(at, entry.at);
    if (away <= bestDistance) {
      best = entry;
      bestDistance = away;
    }
  }
  return best;
}
