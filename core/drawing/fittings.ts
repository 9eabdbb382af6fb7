import type { Boat, Fitting } from '../model/boat.ts';
import { fair, frame, joined, type Metre, straight } from './curve.ts';
import { flybridge, wheelhouse } from './fittingHouses.ts';
import { sheerZM } from './hullLines.ts';
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
  // Metres from the foot of the fore leg, heights as shares.
  const fromFore = frame(fore - 0.16 * heightM, base, 0.16 * heightM, heightM);
  const leg = fromFore('0 0, 0.6 0.62, 0.95 0.86, 1.2 1');
  const afterLeg = frame(aft, base, heightM, heightM)('-0.064 0, 0 0.94');
  const beside = (points: readonly Metre[]): Metre[] => points.map(([x, z]) => [x + tubeM, z]);
  return [
    outline(pen, fair(leg), 'none', 1),
    outline(pen, fair(beside(leg)), 'none', 0.7),
    outline(pen, straight(afterLeg), 'none', 0.7),
    outline(pen, straight(beside(afterLeg)), 'none', 1),
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
