import type { Boat } from '../model/boat.ts';
import { fair, joined, straight } from './curve.ts';
import { hullForm, sheerZM } from './hullLines.ts';
import { hairline, type Pen, thin } from './pen.ts';
import type { Shape } from './types.ts';

/** Stanchions and guard wires between pulpit and pushpit, anchor on its roller, wheel in the cockpit. */
export function deckGear(boat: Boat, pen: Pen): readonly Shape[] {
  return [...guardRails(boat, pen), ...anchor(boat, pen), ...wheel(boat, pen)];
}

function guardRails(boat: Boat, pen: Pen): readonly Shape[] {
  const pulpit = boat.fittings.find((fitting) => fitting.kind === 'pulpit');
  if (!pulpit) return [];
  const pushpit = boat.fittings.find((fitting) => fitting.kind === 'pushpit');
  const fromM = pulpit.xAftM;
  const form = hullForm(boat);
  const motor = form === 'planing' || form === 'displacement';
  const toM = pushpit?.xForeM ?? (motor ? 0.62 : 0.86) * boat.loaM;
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
