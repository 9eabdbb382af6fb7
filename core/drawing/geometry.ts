/** A point in drawing units, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A box in drawing units; `right >= left`, `bottom >= top`. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Rounds to a hundredth: finer than any output can show, and it keeps path strings short. Never negative zero. */
export const round2 = (value: number): number => Math.round(value * 100) / 100 + 0;

export const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

export const boxAround = (center: Point, halfWidth: number, halfHeight: number): Box => ({
  left: center.x - halfWidth,
  right: center.x + halfWidth,
  top: center.y - halfHeight,
  bottom: center.y + halfHeight,
});

export const grown = (box: Box, by: number): Box => ({
  left: box.left - by,
  right: box.right + by,
  top: box.top - by,
  bottom: box.bottom + by,
});

export const union = (a: Box, b: Box): Box => ({
  left: Math.min(a.left, b.left),
  right: Math.max(a.right, b.right),
  top: Math.min(a.top, b.top),
  bottom: Math.max(a.bottom, b.bottom),
});

/** Whether two boxes share area; boxes that only touch do not. */
export const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether `inner` lies in `outer`, edges included. */
export const contains = (outer: Box, inner: Box): boolean =>
  inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom;

/** Whether two segments cross in their insides; segments that share an end or only touch do not. */
export function crosses(a1: Point, a2: Point, b1: Point, b2: Point): boolean {
  const side = (p: Point, q: Point, r: Point): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a1, a2, b1) * side(a1, a2, b2) < 0 && side(b1, b2, a1) * side(b1, b2, a2) < 0;
}

/** Length of the part of segment a–b inside the box (Liang–Barsky clipping). */
export function lengthInBox(a: Point, b: Point, box: Box): number {
  let enter = 0;
  let leave = 1;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  for (const [delta, gap] of [
    [-dx, a.x - box.left],
    [dx, box.right - a.x],
    [-dy, a.y - box.top],
    [dy, box.bottom - a.y],
  ] as const) {
    if (delta === 0) {
      if (gap < 0) return 0;
    } else if (delta < 0) enter = Math.max(enter, gap / delta);
    else leave = Math.min(leave, gap / delta);
  }
  return leave > enter ? (leave - enter) * Math.hypot(dx, dy) : 0;
}

/** The point `share` (0..1) of the way from a to b. */
export const along = (a: Point, b: Point, share: number): Point => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

/** Distance from a point to the segment a–b. */
export function distanceToSegment(point: Point, a: Point, b: Point): number {
  const squared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const share = squared === 0 ? 0 : ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / squared;
  return distance(point, along(a, b, clamp(share, 0, 1)));
}
