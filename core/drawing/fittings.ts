import type { Boat, Fitting } from '../model/boat.ts';
import { fair, joined, type Metre, straight } from './curve.ts';
import { hullForm, sheerZM } from './hullLines.ts';
import { hairline, outline, type Pen, pane, thin } from './pen.ts';
import type { Shape } from './types.ts';

/** One fitting as it is seen from the side. */
export function fittingShapes(boat: Boat, fitting: Fitting, pen: Pen): readonly Shape[] {
  switch (fitting.kind) {
    case 'arch':
      return arch(fitting, pen);
    case 'hardtop':
      return hardtop(fitting, pen);
    case 'radar-pole':
    case 'pole':
      return pole(fitting, pen);
    case 'pulpit':
      return pulpit(boat, fitting, pen);
    case 'pushpit':
      return pushpit(boat, fitting, pen);
    case 'wheelhouse':
      return wheelhouse(boat, fitting, pen);
    case 'flybridge':
      return flybridge(fitting, pen);
    case 'bowsprit':
      return bowsprit(boat, fitting, pen);
  }
}

/** Two tubes each side bent over into a flat top. */
function arch({ xForeM: fore, xAftM: aft, zBaseM: base, zTopM: top }: Fitting, pen: Pen): readonly Shape[] {
  const heightM = top - base;
  const tubeM = Math.max(0.06, 0.035 * heightM);
  const lean = 0.16 * heightM;
  const bow = Math.min(0.18 * heightM, 0.35);
  const leg = (footXM: number, topXM: number, inset: number) =>
    fair([
      [footXM, base],
      [footXM + (topXM - footXM) * 0.6, base + 0.62 * heightM],
      [topXM - inset * 0.2, top - bow],
      [topXM + inset, top],
    ]);
  return [
    outline(pen, leg(fore - lean, fore, 0.1), 'none', 1),
    outline(pen, leg(fore - lean + tubeM, fore + tubeM, 0.1), 'none', 0.7),
    outline(
      pen,
      straight([
        [aft - 0.4 * lean, base],
        [aft, top - 0.5 * bow],
      ]),
      'none',
      0.7,
    ),
    outline(
      pen,
      straight([
        [aft - 0.4 * lean + tubeM, base],
        [aft + tubeM, top - 0.4 * bow],
      ]),
      'none',
      1,
    ),
    pane(
      pen,
      [
        [fore - 0.02, top],
        [aft + tubeM + 0.05, top],
        [aft + tubeM, top - tubeM],
        [fore + 0.02, top - tubeM],
      ],
      1,
      'boat',
    ),
  ];
}

/** A slab roof on posts. */
function hardtop({ xForeM: fore, xAftM: aft, zBaseM: base, zTopM: top }: Fitting, pen: Pen): readonly Shape[] {
  const thickM = Math.max(0.07, Math.min(0.14, 0.06 * (top - base)));
  const slab = joined(
    straight([[fore + 0.06, top - thickM]]),
    fair([
      [fore + 0.06, top - thickM],
      [fore - 0.04, top - 0.5 * thickM],
      [fore + 0.1, top - 0.05 * thickM],
      [(fore + aft) / 2, top + 0.02],
      [aft - 0.1, top - 0.05 * thickM],
      [aft + 0.04, top - 0.5 * thickM],
      [aft - 0.06, top - thickM],
    ]),
  );
  const post = (xM: number, leanM: number): Shape =>
    outline(
      pen,
      straight([
        [xM - leanM, base],
        [xM, top - thickM],
        [xM + 0.07, top - thickM],
        [xM + 0.07 - leanM, base],
      ]),
      'paper',
      0.7,
    );
  const posts = base < top - 0.3 ? [post(fore + 0.12, 0.1), post(aft - 0.2, -0.05)] : [];
  return [...posts, outline(pen, slab, 'paper', 1.1)];
}

function pole({ xForeM, xAftM, zBaseM: base, zTopM: top }: Fitting, pen: Pen): readonly Shape[] {
  const xM = (xForeM + xAftM) / 2;
  const r = 0.035;
  return [
    pane(
      pen,
      [
        [xM - r, base],
        [xM - r, top],
        [xM + r, top],
        [xM + r, base],
      ],
      0.9,
      'boat',
    ),
    hairline(
      pen,
      [
        [xM - 3 * r, base],
        [xM + 3 * r, base],
      ],
      1,
    ),
    hairline(
      pen,
      [
        [xM, base + 0.55 * (top - base)],
        [xM - Math.min(0.6, 0.3 * (top - base)), base],
      ],
      0.7,
    ),
  ];
}

function pulpit(boat: Boat, { xForeM: fore, xAftM: aft, zTopM: top }: Fitting, pen: Pen): readonly Shape[] {
  const deck = (xM: number): number => sheerZM(boat, Math.max(0, xM));
  const middle = (xM: number): number => deck(xM) + 0.5 * (top - deck(xM));
  const rise = 0.08 * (top - deck(fore));
  const rail = joined(
    straight([[aft, deck(aft)]]),
    straight([[aft, top]]),
    fair([
      [aft, top],
      [fore + 0.4 * (aft - fore), top + 0.4 * rise],
      [fore - 0.02, top + rise],
      [fore - 0.05, top - 0.25 * (top - deck(fore))],
      [fore + 0.16 * (aft - fore), deck(fore)],
    ]),
  );
  const legXM = fore + 0.52 * (aft - fore);
  return [
    thin(pen, rail, 1),
    hairline(
      pen,
      [
        [aft, middle(aft)],
        [fore + 0.02, middle(fore)],
      ],
      0.6,
    ),
    hairline(
      pen,
      [
        [legXM, top + 0.3 * rise],
        [legXM + 0.05, deck(legXM)],
      ],
      0.8,
    ),
  ];
}

function pushpit(boat: Boat, { xForeM: fore, xAftM: aft, zTopM: top }: Fitting, pen: Pen): readonly Shape[] {
  const deck = (xM: number): number => sheerZM(boat, Math.min(xM, boat.loaM * 0.955));
  const rail = joined(
    straight([
      [fore, deck(fore)],
      [fore, top],
    ]),
    fair([
      [fore, top],
      [aft - 0.12, top + 0.01],
      [aft, top - 0.12],
      [aft - 0.02, deck(aft)],
    ]),
  );
  const middle = (xM: number): number => deck(xM) + 0.5 * (top - deck(xM));
  const legXM = (fore + aft) / 2;
  return [
    thin(pen, rail, 1),
    hairline(
      pen,
      [
        [fore, middle(fore)],
        [aft, middle(aft)],
      ],
      0.6,
    ),
    hairline(
      pen,
      [
        [legXM, top],
        [legXM, deck(legXM)],
      ],
      0.8,
    ),
  ];
}

/**
 * Wheelhouse: screens leaning forward at the top on a displacement boat, raked aft on a fast one. On a fast boat one that
 * is no higher than the deckhouse is the fore part of that house, which shows it already.
 */
function wheelhouse(boat: Boat, fitting: Fitting, pen: Pen): readonly Shape[] {
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
function flybridge({ xForeM: fore, xAftM: aft, zBaseM: base, zTopM: top }: Fitting, pen: Pen): readonly Shape[] {
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

/** Spar over the bow with its bobstay. */
function bowsprit(
  boat: Boat,
  { xForeM: fore, xAftM: aft, zBaseM: base, zTopM: top }: Fitting,
  pen: Pen,
): readonly Shape[] {
  const thickM = Math.max(0.09, 0.012 * boat.loaM);
  return [
    hairline(
      pen,
      [
        [fore + 0.1, top - thickM],
        [0.35 * Math.max(0.2, boat.loaM - boat.lwlM), 0.25 * boat.freeboardForeM],
      ],
      0.8,
    ),
    pane(
      pen,
      [
        [aft, base],
        [fore, top - 0.2 * thickM],
        [fore, top - thickM],
        [aft, base - thickM],
      ],
      1,
      'boat',
    ),
  ];
}
