import type { Place, Position } from '../model/boat.ts';
import type { Project } from '../model/project.ts';

/** How far from its place an item still counts as standing there, m. */
export const ATTACHED_WITHIN_M = 1;

export interface Offset {
  readonly dxM: number;
  readonly dyM: number;
  readonly dzM: number;
}

/** A position rounded to millimetres, so that repeated moves leave no crumbs; `+ 0` keeps a negative zero out. */
export function tidy(position: Position): Position {
  return { xM: toMm(position.xM), yM: toMm(position.yM), zM: toMm(position.zM) };
}

/** Rounds metres to millimetres. */
export const toMm = (valueM: number): number => Math.round(valueM * 1000) / 1000 + 0;

export function moved(position: Position, by: Offset): Position {
  return tidy({ xM: position.xM + by.dxM, yM: position.yM + by.dyM, zM: position.zM + by.dzM });
}

export function offsetBetween(from: Position, to: Position): Offset {
  return { dxM: to.xM - from.xM, dyM: to.yM - from.yM, dzM: to.zM - from.zM };
}

/** Straight distance, m. */
export function distanceM(a: Position, b: Position): number {
  return Math.hypot(a.xM - b.xM, a.yM - b.yM, a.zM - b.zM);
}

/** A way along, across and up the boat, as wires follow its structure and not the straight line, to the next half metre, m. */
export function wayAlongM(a: Position, b: Position): number {
  const { dxM, dyM, dzM } = offsetBetween(a, b);
  return Math.max(0.5, Math.ceil((Math.abs(dxM) + Math.abs(dyM) + Math.abs(dzM)) * 2) / 2);
}

/** The place nearest to a position, within `maxM` metres; undefined when there is none so near. */
export function nearestPlace(project: Project, position: Position, maxM: number): Place | undefined {
  let best: Place | undefined;
  let bestM = maxM;
  for (const place of project.places) {
    const awayM = distanceM(place.position, position);
    // Written so that a position that is not a number is near nothing.
    if (!(awayM <= bestM) || (best !== undefined && awayM === bestM)) continue;
    best = place;
    bestM = awayM;
  }
  return best;
}

/** The place an item keeps after it went to `position`: its own while it stays near, else none. */
export function keptPlaceId(project: Project, placeId: string | null, position: Position): string | null {
  if (placeId === null) return null;
  const place = project.places.find((candidate) => candidate.id === placeId);
  return place && distanceM(place.position, position) <= ATTACHED_WITHIN_M ? placeId : null;
}

export interface OnRoute {
  /** Number of whole legs before the spot: the index a bend put there gets in `via`. */
  readonly leg: number;
  /** Share of the route's length before the spot, 0 to 1. */
  readonly share: number;
  /** The spot itself. */
  readonly position: Position;
}

/** The spot on a polyline nearest to a position. A route of no length gives its start with half on either side. */
export function nearestOnRoute(points: readonly Position[], position: Position): OnRoute {
  let walkedM = 0;
  let best: { leg: number; alongM: number; position: Position; awayM: number } | null = null;
  for (let leg = 0; leg + 1 < points.length; leg += 1) {
    const [a, b] = [points[leg], points[leg + 1]];
    if (!a || !b) break;
    const lengthM = distanceM(a, b);
    const share = lengthM === 0 ? 0 : clamp(dot(offsetBetween(a, position), offsetBetween(a, b)) / lengthM ** 2);
    const spot = {
      xM: a.xM + share * (b.xM - a.xM),
      yM: a.yM + share * (b.yM - a.yM),
      zM: a.zM + share * (b.zM - a.zM),
    };
    const awayM = distanceM(spot, position);
    if (best === null || awayM < best.awayM)
      best = { leg, alongM: walkedM + share * lengthM, position: tidy(spot), awayM };
    walkedM += lengthM;
  }
  if (best === null) return { leg: 0, share: 0.5, position };
  return { leg: best.leg, share: walkedM === 0 ? 0.5 : best.alongM / walkedM, position: best.position };
}

/** The spot at half the length of a polyline, or null when it has no points. */
export function middleOfRoute(points: readonly Position[]): Position | null {
  let leftM = points.reduce((sumM, point, index) => sumM + distanceM(points[index - 1] ?? point, point), 0) / 2;
  for (let leg = 0; leg + 1 < points.length; leg += 1) {
    const [a, b] = [points[leg], points[leg + 1]];
    if (!a || !b) break;
    const lengthM = distanceM(a, b);
    if (leftM <= lengthM && lengthM > 0) {
      const share = leftM / lengthM;
      return tidy({
        xM: a.xM + share * (b.xM - a.xM),
        yM: a.yM + share * (b.yM - a.yM),
        zM: a.zM + share * (b.zM - a.zM),
      });
    }
    leftM -= lengthM;
  }
  return points[0] ?? null;
}

const clamp = (share: number): number => Math.min(1, Math.max(0, share));
const dot = (a: Offset, b: Offset): number => a.dxM * b.dxM + a.dyM * b.dyM + a.dzM * b.dzM;
