import type { Boat } from '../model/boat.ts';
import { type Curve, fair, joined, type Metre, sampled } from './curve.ts';

/** How a hull is built, which decides its profile below the sheer. */
export type HullForm = 'fin-keel' | 'long-keel' | 'catamaran' | 'planing' | 'displacement' | 'open';

/** The lines of a hull in profile, boat metres. */
export interface HullLines {
  /** Stem, bottom and transom, from the stem head to the aft end of the sheer. */
  readonly outline: Curve;
  /** Deck edge from the stem head aft. */
  readonly sheer: Curve;
  /** Keel, rudder, skeg, daggerboard: closed shapes inked like the hull. */
  readonly appendages: readonly Curve[];
  /** Boot top, rubbing strake, chine, tread lines: thin. */
  readonly details: readonly Curve[];
}

/** The form a boat most likely has, from its kind and what it is built of. */
export function hullForm(boat: Boat): HullForm {
  switch (boat.kind) {
    case 'catamaran':
      return 'catamaran';
    case 'motor-yacht':
      return 'planing';
    case 'trawler':
      return 'displacement';
    case 'open-boat':
      return 'open';
    case 'ketch':
    case 'schooner':
      return 'long-keel';
    default:
      return ['steel', 'wood', 'ferrocement'].includes(boat.hullMaterial) ? 'long-keel' : 'fin-keel';
  }
}

/** Height of the deck edge above the waterline at x, m: a parabola through the three freeboards. */
export function sheerZM(boat: Boat, xM: number): number {
  const { freeboardForeM: fore, freeboardMidM: mid, freeboardAftM: aft, loaM } = boat;
  const t = Math.min(1.2, Math.max(-0.2, xM / loaM));
  // Lagrange through t = 0, 1/2, 1.
  return fore * (2 * t - 1) * (t - 1) + mid * 4 * t * (1 - t) + aft * t * (2 * t - 1);
}

/** Ends of the waterline, m aft of the stem: motor craft have nearly all their overhang forward. */
export function waterlineEnds(boat: Boat): { readonly foreM: number; readonly aftM: number } {
  const overhangM = Math.max(0, boat.loaM - boat.lwlM);
  const share = { 'fin-keel': 0.5, 'long-keel': 0.52, catamaran: 0.35, planing: 0.86, displacement: 0.7, open: 0.8 };
  const foreM = overhangM * share[hullForm(boat)];
  return { foreM, aftM: boat.loaM - (overhangM - foreM) };
}

/** Two lines just above the water, rising a little to the ends, as boot tops are struck. */
export function bootTop(boat: Boat, foreM: number, aftM: number): readonly Curve[] {
  const heightM = 0.075 * boat.freeboardMidM + 0.02;
  const span = Math.max(0.1, aftM - foreM);
  const rise = (xM: number): number => 0.5 * ((2 * (xM - foreM)) / span - 1) ** 2;
  return [0.6, 1.5].map((factor) =>
    sampled((xM) => heightM * (factor + rise(xM)), foreM * (1 - 0.09 * factor), aftM, 6),
  );
}

/** A propeller edge-on: hub and two blades. */
export function propeller([xM, zM]: Metre, radiusM: number): Curve {
  const r = radiusM;
  return joined(
    fair([
      [xM, zM],
      [xM + 0.28 * r, zM + 0.55 * r],
      [xM, zM + r],
      [xM - 0.12 * r, zM + 0.5 * r],
      [xM, zM],
    ]),
    fair([
      [xM, zM],
      [xM + 0.12 * r, zM - 0.5 * r],
      [xM, zM - r],
      [xM - 0.28 * r, zM - 0.55 * r],
      [xM, zM],
    ]),
  );
}

/** Size of an open boat's outboard, m: the height of its cowl. */
export const outboardM = (boat: Boat): number => Math.min(0.55, 0.08 * boat.loaM);
