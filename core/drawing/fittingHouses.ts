import type { Boat, Fitting } from '../model/boat.ts';
import { fair, joined, type Metre, straight } from './curve.ts';
import { hullForm } from './hullLines.ts';
import { hairline, outline, type Pen, pane } from './pen.ts';
import type { Shape } from './types.ts';

/**
 * Wheelhouse: screens leaning forward at the top on a displacement boat, raked aft on a fast one. On a fast boat one that
 * is no higher than the deckhouse is the fore part of that house, which shows it already.
 */
export function wheelhouse(boat: Boat, fitting: Fitting, pen: Pen): readonly Shape[] {
  const planing = hullForm(boat) === 'planing';
  if (
    planing &&
    boat.deckhouses.some((house) => fitting.zTopM <= house.zTopM + 0.1 && fitting.xForeM >= house.xForeM - 0.1)
  ) {
    return [];
  }
  const { xForeM: fore, xAftM: aft, zTopM: top } = fitting;
  const base = Math.min(fitting.zBaseM, top - 0.2);
  const heightM = top - base;
  const lean = planing ? 0.5 * heightM : -0.11 * heightM;
  const waist = base + 0.48 * heightM;
  const roofM = Math.min(0.1, 0.06 * heightM);
  const brow = 0.1 * heightM;
  const front: readonly Metre[] =
    lean > 0
      ? [
          [fore, base],
          [fore + lean, top - roofM],
        ]
      : [
          [fore, base],
          [fore, waist],
          [fore + lean * 0.6, top - roofM],
        ];
  const frontTopM = lean > 0 ? fore + lean : fore + lean * 0.6;
  const roof: readonly Metre[] = [
    [frontTopM - brow, top - roofM],
    [frontTopM - brow * 0.8, top],
    [aft + 0.08, top],
    [aft + 0.1, top - roofM],
  ];
  const frontAt = (zM: number): number =>
    lean > 0 ? fore + (lean * (zM - base)) / heightM : fore + (lean * 0.6 * (zM - waist)) / (top - waist);
  const high = top - roofM - 0.06 * heightM;
  const low = waist + 0.03 * heightM;
  const doorM = Math.min(0.65, 0.3 * (aft - fore));
  const windowEnd = aft - doorM - 0.2;
  const split = (frontAt(low) + windowEnd) / 2 + 0.05;
  const pane1: readonly Metre[] = [
    [frontAt(low) + 0.1, low],
    [frontAt(high) + 0.1, high],
    [split - 0.04, high],
    [split - 0.04, low],
  ];
  const pane2: readonly Metre[] = [
    [split + 0.04, low],
    [split + 0.04, high],
    [windowEnd, high],
    [windowEnd, low],
  ];
  const door: readonly Metre[] = [
    [aft - doorM - 0.08, base + 0.04],
    [aft - doorM - 0.08, high],
    [aft - 0.1, high],
    [aft - 0.1, base + 0.04],
  ];
  const light: readonly Metre[] = [
    [aft - doorM, low],
    [aft - doorM, high - 0.07],
    [aft - 0.18, high - 0.07],
    [aft - 0.18, low],
  ];
  return [
    outline(pen, straight([...front, [aft, top - roofM], [aft, base]]), 'paper', 1),
    outline(pen, straight(roof), 'paper', 1),
    ...[pane1, pane2, door, light].filter(hasRoom).map((points) => pane(pen, points, 0.8)),
  ];
}

/** Not squeezed inside out by a very short house. */
function hasRoom(points: readonly Metre[]): boolean {
  const [a, , , d] = points;
  return a !== undefined && d !== undefined && d[0] - a[0] > 0.08;
}

/** Coaming raked forward into a venturi screen, helm seat, rail round the after end. */
export function flybridge({ xForeM: fore, xAftM: aft, zBaseM: base, zTopM: top }: Fitting, pen: Pen): readonly Shape[] {
  const heightM = Math.max(0.1, top - base);
  const lengthM = aft - fore;
  const x = (share: number): number => fore + share * lengthM;
  const z = (share: number): number => base + share * heightM;
  const coaming = joined(
    fair([
      [fore, base],
      [x(0.06), z(0.3)],
      [x(0.15), z(0.58)],
    ]),
    straight([
      [x(0.74), z(0.58)],
      [x(0.8), z(0.5)],
      [x(0.86), base],
    ]),
  );
  const screen: readonly Metre[] = [
    [x(0.15), z(0.58)],
    [x(0.23), top],
    [x(0.27), top],
    [x(0.36), z(0.58)],
  ];
  const seat: readonly Metre[] = [
    [x(0.5), z(0.58)],
    [x(0.52), z(0.98)],
    [x(0.56), z(0.98)],
    [x(0.58), z(0.58)],
  ];
  return [
    pane(pen, screen, 0.8),
    pane(pen, seat, 0.8),
    outline(pen, coaming, 'paper', 1),
    hairline(
      pen,
      [
        [x(0.74), z(0.58)],
        [x(0.76), z(0.92)],
        [aft, z(0.92)],
        [aft, base],
      ],
      0.9,
    ),
    hairline(
      pen,
      [
        [x(0.8), z(0.46)],
        [aft, z(0.46)],
      ],
      0.6,
    ),
    hairline(
      pen,
      [
        [x(0.88), z(0.92)],
        [x(0.88), base],
      ],
      0.8,
    ),
  ];
}
