import type { Boat, Fitting } from '../model/boat.ts';
import { fair, frame, joined, type Metre, straight } from './curve.ts';
import { hullForm } from './hullLines.ts';
import { hairline, outline, type Pen, pane } from './pen.ts';
import type { Shape } from './types.ts';

/**
 * Wheelhouse: screens leaning forward at the top on a displacement boat, raked aft on a fast one. On a fast boat one that
 * is no higher than the deckhouse is the fore part of that house, which shows it already.
 */
export function wheelhouse(boat: Boat, fitting: Fitting, pen: Pen): readonly Shape[] {
  const { xForeM: fore, xAftM: aft, zTopM: top } = fitting;
  const planing = hullForm(boat) === 'planing';
  const covers = (house: Boat['deckhouses'][number]): boolean => top <= house.zTopM + 0.1 && fore >= house.xForeM - 0.1;
  if (planing && boat.deckhouses.some(covers)) return [];
  const base = Math.min(fitting.zBaseM, top - 0.2);
  const heightM = top - base;
  const roofM = Math.min(0.1, 0.06 * heightM);
  const waist = base + 0.48 * heightM;
  // The screen: from the deck where it rakes aft, from the waist up where it leans forward.
  const foot: Metre = planing ? [fore, base] : [fore, waist];
  const head: Metre = [planing ? fore + 0.5 * heightM : fore - 0.066 * heightM, top - roofM];
  const frontAt = (zM: number): number => foot[0] + ((head[0] - foot[0]) * (zM - foot[1])) / (head[1] - foot[1]);
  const brow = 0.1 * heightM;
  const roof: readonly Metre[] = [
    [head[0] - brow, top - roofM],
    [head[0] - brow * 0.8, top],
    [aft + 0.08, top],
    [aft + 0.1, top - roofM],
  ];
  const high = top - roofM - 0.06 * heightM;
  return [
    outline(pen, straight([[fore, base], foot, head, [aft, top - roofM], [aft, base]]), 'paper', 1),
    outline(pen, straight(roof), 'paper', 1),
    ...openings({ fore, aft, base, low: waist + 0.03 * heightM, high }, frontAt).map((points) =>
      pane(pen, points, 0.8),
    ),
  ];
}

/** Two windows and, at the after end, a door with its light; those that a short house has no room for are left out. */
function openings(
  { aft, base, low, high }: { fore: number; aft: number; base: number; low: number; high: number },
  frontAt: (zM: number) => number,
): readonly (readonly Metre[])[] {
  const doorM = Math.min(0.65, 0.3 * (aft - frontAt(low)));
  const endM = aft - doorM - 0.2;
  const split = (frontAt(low) + endM) / 2 + 0.05;
  const upright = (a: number, b: number, bottom: number, top: number): readonly Metre[] => [
    [a, bottom],
    [a, top],
    [b, top],
    [b, bottom],
  ];
  const screen: readonly Metre[] = [
    [frontAt(low) + 0.1, low],
    [frontAt(high) + 0.1, high],
    [split - 0.04, high],
    [split - 0.04, low],
  ];
  const all = [
    screen,
    upright(split + 0.04, endM, low, high),
    upright(aft - doorM - 0.08, aft - 0.1, base + 0.04, high),
    upright(aft - doorM, aft - 0.18, low, high - 0.07),
  ];
  return all.filter(([a, , , d]) => a !== undefined && d !== undefined && d[0] - a[0] > 0.08);
}

/** Coaming raked forward into a venturi screen, helm seat, rail round the after end. */
export function flybridge({ xForeM, xAftM, zBaseM, zTopM }: Fitting, pen: Pen): readonly Shape[] {
  const at = frame(xForeM, zBaseM, xAftM - xForeM, Math.max(0.1, zTopM - zBaseM));
  const coaming = joined(fair(at('0 0, 0.06 0.3, 0.15 0.58')), straight(at('0.74 0.58, 0.8 0.5, 0.86 0')));
  return [
    pane(pen, at('0.15 0.58, 0.23 1, 0.27 1, 0.36 0.58'), 0.8),
    pane(pen, at('0.5 0.58, 0.52 0.98, 0.56 0.98, 0.58 0.58'), 0.8),
    outline(pen, coaming, 'paper', 1),
    hairline(pen, at('0.74 0.58, 0.76 0.92, 1 0.92, 1 0'), 0.9),
    hairline(pen, at('0.8 0.46, 1 0.46'), 0.6),
    hairline(pen, at('0.88 0.92, 0.88 0'), 0.8),
  ];
}
