import type { Boat } from '../model/boat.ts';
import { fair, frame, joined, straight } from './curve.ts';
import { hullForm, sheerZM } from './hullLines.ts';
import { hairline, type Pen, pane, thin } from './pen.ts';
import type { Shape } from './types.ts';

/** Stanchions and guard wires, anchor on its roller, wheel in the cockpit, console of an open boat. */
export function deckGear(boat: Boat, pen: Pen): readonly Shape[] {
  return [...guardRails(boat, pen), ...anchor(boat, pen), ...wheel(boat, pen), ...console(boat, pen)];
}

/** Centre console with its screen and wheel, and the leaning post behind it. */
function console(boat: Boat, pen: Pen): readonly Shape[] {
  if (boat.kind !== 'open-boat' || boat.deckhouses.length > 0 || boat.loaM < 4) return [];
  const xM = 0.46 * boat.loaM;
  // What stands below the gunwale is hidden by the side.
  const footM = sheerZM(boat, xM);
  const topM = 0.55 * boat.freeboardMidM + Math.min(1.05, 0.2 * boat.loaM);
  if (topM - footM < 0.2) return [];
  const at = frame(xM, footM, Math.min(0.6, 0.1 * boat.loaM), topM - footM);
  return [
    pane(pen, at('0 0, 0.12 0.66, 0.55 0.94, 0.95 0.62, 1 0'), 1, 'boat'),
    hairline(pen, at('0.14 0.68, 0.44 1.4, 0.64 1.42, 0.58 0.94'), 0.8),
    hairline(pen, at('0.98 0.56, 1.22 0.9'), 1.2),
    pane(pen, at('1.75 0, 1.7 0.6, 2.4 0.6, 2.35 0'), 0.9, 'boat'),
    hairline(pen, at('2.34 0.6, 2.48 1'), 1),
  ];
}

function guardRails(boat: Boat, pen: Pen): readonly Shape[] {
  const pulpit = boat.fittings.find((fitting) => fitting.kind === 'pulpit');
  if (!pulpit) return [];
  const pushpit = boat.fittings.find((fitting) => fitting.kind === 'pushpit');
  const fromM = pulpit.xAftM;
  const form = hullForm(boat);
  const motor = form === 'planing' || form === 'displacement';
  const toM = pushpit?.xForeM ?? (motor ? 0.6 : 0.86) * boat.loaM;
  const railM = pulpit.zTopM - sheerZM(boat, fromM);
  const endM = pushpit ? pushpit.zTopM - sheerZM(boat, toM) : 0.9 * railM;
  const height = (xM: number): number => railM + ((endM - railM) * (xM - fromM)) / Math.max(0.1, toM - fromM);
  const count = Math.max(1, Math.round((toM - fromM) / 2));
  const wire = (share: number, weight: number): Shape =>
    hairline(
      pen,
      Array.from({ length: count + 1 }, (_, index) => {
        const xM = fromM + ((toM - fromM) * index) / count;
        return [xM, sheerZM(boat, xM) + share * height(xM)] as const;
      }),
      weight,
    );
  const posts = Array.from({ length: count - (pushpit ? 1 : 0) }, (_, index) => {
    const xM = fromM + ((toM - fromM) * (index + 1)) / count;
    return hairline(
      pen,
      [
        [xM, sheerZM(boat, xM)],
        [xM, sheerZM(boat, xM) + height(xM)],
      ],
      0.8,
    );
  });
  return [wire(1, motor ? 0.9 : 0.6), wire(0.5, 0.5), ...posts];
}

/** A plough anchor stowed over the bow roller. */
function anchor(boat: Boat, pen: Pen): readonly Shape[] {
  if (hullForm(boat) === 'catamaran' || boat.kind === 'open-boat') return [];
  const z = boat.freeboardForeM;
  const s = Math.min(0.55, 0.04 * boat.loaM);
  return [
    thin(
      pen,
      joined(
        straight([
          [0.5 * s, z + 0.09 * s],
          [-0.22 * s, z + 0.1 * s],
        ]),
        straight([[-0.42 * s, z - 0.35 * s]]),
      ),
      1,
    ),
    thin(
      pen,
      fair([
        [-0.42 * s, z - 0.35 * s],
        [-0.1 * s, z - 0.3 * s],
        [0.22 * s, z - 0.62 * s],
        [-0.28 * s, z - 0.6 * s],
        [-0.42 * s, z - 0.35 * s],
      ]),
      0.9,
    ),
  ];
}

/** Pedestal and wheel of a sailing boat, seen from the side. */
function wheel(boat: Boat, pen: Pen): readonly Shape[] {
  const form = hullForm(boat);
  const house = boat.deckhouses.at(-1);
  if ((form !== 'fin-keel' && form !== 'long-keel') || !house) return [];
  const room = boat.loaM - house.xAftM;
  if (room < 1.5) return [];
  const xM = house.xAftM + 0.52 * room;
  const z = sheerZM(boat, xM);
  const r = Math.min(0.5, 0.04 * boat.loaM);
  return [
    hairline(
      pen,
      [
        [xM - 0.1, z],
        [xM - 0.06, z + 0.8 * r + 0.2],
        [xM + 0.06, z + 0.8 * r + 0.2],
        [xM + 0.1, z],
      ],
      0.7,
    ),
    hairline(
      pen,
      [
        [xM + 0.06, z + 0.7 * r + 0.15],
        [xM + 0.17, z + 0.7 * r + 0.2],
      ],
      0.7,
    ),
    hairline(
      pen,
      [
        [xM + 0.14, z - 0.2 * r + 0.15],
        [xM + 0.2, z + 1.6 * r + 0.15],
      ],
      1,
    ),
  ];
}
