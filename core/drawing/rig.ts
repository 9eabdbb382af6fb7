import type { Boat, Mast } from '../model/boat.ts';
import type { Item } from '../model/project.ts';
import { fair, frame, type Metre, straight } from './curve.ts';
import { hullForm, sheerZM } from './hullLines.ts';
import { hairline, inked, outline, type Pen, pane, thin } from './pen.ts';
import type { Shape } from './types.ts';

/** One wire of the rig and the mast (or masts) it goes with. */
export interface Stay {
  readonly mastIds: readonly string[];
  readonly points: readonly Metre[];
  /** A headsail is rolled up on it. */
  readonly furled?: boolean;
}

/** Section of a mast as drawn, m: never thinner than can be seen. */
export function mastWidthM(mast: Mast, pen: Pen): number {
  return Math.max(mast.sectionMm / 1000, (2.4 * pen.u) / pen.projection.scale);
}

/** Standing rigging of a sailing boat. Wire antennas that are part of a stay are given, so that it is not drawn twice. */
export function stays(boat: Boat, wires: readonly Item[]): readonly Stay[] {
  if (!isSailing(boat) || boat.masts.length === 0) return [];
  const masts = [...boat.masts].sort((a, b) => a.xM - b.xM);
  const found: Stay[] = masts.flatMap((mast) => shrouds(boat, mast));
  masts.forEach((mast, index) => {
    const next = masts[index + 1];
    if (index === 0) found.push(...headstays(boat, mast));
    if (next) {
      const mastIds = [mast.id, next.id];
      found.push({ mastIds, points: [head(mast), head(next)] });
    } else found.push(...backstay(boat, mast, wires));
  });
  return found;
}

/** Where wires meet a mast near its truck. */
const head = (mast: Mast): Metre => [mast.xM, mast.truckZM - 0.012 * (mast.truckZM - mast.footZM)];

export function isSailing(boat: Boat): boolean {
  const form = hullForm(boat);
  return form === 'fin-keel' || form === 'long-keel' || form === 'catamaran';
}

/** Cap shrouds over the spreaders, lowers fore and aft. */
function shrouds(boat: Boat, mast: Mast): readonly Stay[] {
  const swept = hullForm(boat) === 'catamaran';
  const heightM = mast.truckZM - mast.footZM;
  const aftM = swept ? 0.13 * boat.loaM : 0.016 * heightM;
  const deck = (xM: number): Metre => [xM, sheerZM(boat, xM)];
  const tip = (zM: number): Metre => [mast.xM + (swept ? 0.045 : 0.022) * heightM, zM];
  const mastIds = [mast.id];
  const upToDown = [...mast.spreaderZM].sort((a, b) => b - a);
  const lowest = upToDown.at(-1);
  const cap: Stay = { mastIds, points: [head(mast), ...upToDown.map(tip), deck(mast.xM + aftM)] };
  if (lowest === undefined) return [cap];
  const root: Metre = [mast.xM, lowest - 0.1];
  const lowers = swept ? [0.1 * boat.loaM] : [-0.045 * heightM, 0.05 * heightM];
  return [cap, ...lowers.map((offsetM) => ({ mastIds, points: [root, deck(mast.xM + offsetM)] }))];
}

/** Forestay to the stem or bowsprit, and an inner one where the rig has it. */
function headstays(boat: Boat, mast: Mast): readonly Stay[] {
  const sprit = boat.fittings.find((fitting) => fitting.kind === 'bowsprit');
  const bow: Metre = sprit
    ? [sprit.xForeM + 0.08, sprit.zTopM]
    : [hullForm(boat) === 'catamaran' ? 0.1 * boat.loaM : 0.014 * boat.loaM, sheerZM(boat, 0.014 * boat.loaM)];
  const mastIds = [mast.id];
  const heightM = mast.truckZM - mast.footZM;
  const full: Stay = { mastIds, points: [head(mast), bow], furled: true };
  if (boat.kind !== 'cutter' && boat.kind !== 'ketch' && boat.kind !== 'schooner') return [full];
  const upper = Math.max(...mast.spreaderZM, mast.footZM + 0.68 * heightM);
  const innerXM = sprit ? 0.02 * boat.loaM : 0.4 * mast.xM;
  return [
    full,
    {
      mastIds,
      points: [
        [mast.xM, upper],
        [innerXM, sheerZM(boat, innerXM)],
      ],
      furled: boat.kind === 'cutter',
    },
  ];
}

/** Backstay to the stern, drawn only where no wire antenna takes its place. Swept rigs have none. */
function backstay(boat: Boat, mast: Mast, wires: readonly Item[]): readonly Stay[] {
  if (hullForm(boat) === 'catamaran') return [];
  const mastIds = [mast.id];
  const wire = wires.find((item) => {
    const ends = endsOf(item);
    return ends !== null && Math.abs(ends.upper[0] - mast.xM) < 0.16 * boat.loaM && ends.lower[0] > 0.8 * boat.loaM;
  });
  const ends = wire ? endsOf(wire) : null;
  const stern: Metre = [0.988 * boat.loaM, sheerZM(boat, 0.95 * boat.loaM)];
  if (!ends) return [{ mastIds, points: [head(mast), stern] }];
  return [
    { mastIds, points: [head(mast), ends.upper] },
    { mastIds, points: [ends.lower, [Math.min(ends.lower[0] + 0.05, 0.995 * boat.loaM), stern[1]]] },
  ];
}

function endsOf(item: Item): { readonly lower: Metre; readonly upper: Metre } | null {
  if (!item.endPosition) return null;
  const a: Metre = [item.position.xM, item.position.zM];
  const b: Metre = [item.endPosition.xM, item.endPosition.zM];
  return a[1] <= b[1] ? { lower: a, upper: b } : { lower: b, upper: a };
}

/** Mast with spreaders, boom and stowed sail. Drawn over the stays. */
export function mastShapes(boat: Boat, mast: Mast, pen: Pen): readonly Shape[] {
  const w = mastWidthM(mast, pen) / 2;
  const { xM: x, footZM: foot, truckZM: truck } = mast;
  // Across in half widths of the section, up in shares of the height.
  const at = frame(x, foot, w, truck - foot);
  const foots = mast.stepped === 'deck' ? [hairline(pen, at('-2 0, 2 0'), 1.4)] : [];
  const aloft = isSailing(boat)
    ? [...mast.spreaderZM.map((zM) => spreader(mast, zM, pen)), crane(mast, pen)]
    : crosstree(mast, pen);
  const tube = straight(at('-1 0, -1 0.78, -0.6 1, 1 1, 1 0'));
  return [...boom(boat, mast, pen), outline(pen, tube, 'paper', 1), ...foots, ...aloft];
}

/** Masthead crane, aft of the truck. */
function crane(mast: Mast, pen: Pen): Shape {
  const at = frame(mast.xM + mastWidthM(mast, pen) / 2, mast.truckZM, 1, 1);
  return hairline(pen, at('0 -0.02, 0.16 -0.02, 0 -0.16'), 0.9);
}

/** Seen from the side a spreader is short: its sweep aft. */
function spreader(mast: Mast, zM: number, pen: Pen): Shape {
  const reach = 0.022 * (mast.truckZM - mast.footZM);
  const thick = Math.max(0.035, pen.u / pen.projection.scale);
  const points: readonly Metre[] = [
    [mast.xM - 0.55 * reach, zM + thick],
    [mast.xM + 1.08 * reach, zM + 0.6 * thick],
    [mast.xM + 1.08 * reach, zM - 0.2 * thick],
    [mast.xM - 0.55 * reach, zM - thick],
  ];
  return pane(pen, points, 0.9, 'boat');
}

function crosstree(mast: Mast, pen: Pen): readonly Shape[] {
  const heightM = mast.truckZM - mast.footZM;
  const zs = mast.spreaderZM.length > 0 ? mast.spreaderZM : [mast.footZM + 0.72 * heightM];
  return zs.map((zM) =>
    hairline(
      pen,
      [
        [mast.xM - 0.1 * heightM, zM],
        [mast.xM + 0.1 * heightM, zM],
      ],
      1.3,
    ),
  );
}

/** Boom on its gooseneck, the sail flaked along it, vang and mainsheet; on a motor boat a derrick topped up. */
function boom(boat: Boat, mast: Mast, pen: Pen): readonly Shape[] {
  const { boomZM, boomLengthM: length } = mast;
  if (boomZM === null || length <= 0) return [];
  const w = mastWidthM(mast, pen) / 2;
  const derrick = !isSailing(boat);
  const rise = derrick ? 0.4 : 0.02;
  const run = derrick ? Math.sqrt(1 - rise * rise) : 1;
  const thick = Math.max(0.012 * length, (1.6 * pen.u) / pen.projection.scale);
  const on = (share: number, up = 0): Metre => [
    mast.xM + w + share * (length - w) * run,
    boomZM + share * length * rise + up,
  ];
  const spar = pane(pen, [on(0, thick / 2), on(1, thick / 2), on(1, -thick / 2), on(0, -thick / 2)], 1, 'boat');
  if (derrick) {
    return [
      hairline(pen, [on(1), [mast.xM, mast.truckZM - 0.05]], 0.7),
      hairline(pen, [on(1), on(1, -0.35 * length)], 0.6),
      spar,
    ];
  }
  return [...stowedSail(boat, mast, pen, on, thick), spar];
}

/** The sail flaked on the boom under its ties, the vang and the mainsheet. */
function stowedSail(
  boat: Boat,
  mast: Mast,
  pen: Pen,
  on: (share: number, up?: number) => Metre,
  thick: number,
): readonly Shape[] {
  const stow = Math.min(0.34, 0.058 * mast.boomLengthM);
  const heights: readonly (readonly [share: number, up: number])[] = [
    [0.015, thick / 2],
    [0.03, stow * 1.5],
    [0.12, stow * 1.05],
    [0.3, stow * 0.98],
    [0.55, stow * 0.8],
    [0.8, stow * 0.56],
    [0.95, thick * 0.7],
  ];
  const sail = fair(heights.map(([share, up]) => on(share, up)));
  const ties = [0.16, 0.34, 0.52, 0.7].map((share) =>
    hairline(pen, [on(share, stow * (1.1 - 0.5 * share)), on(share + 0.012, -thick / 2)], 0.6),
  );
  const [sheetXM] = on(0.86);
  const deckM = Math.max(sheerZM(boat, Math.min(boat.loaM * 0.95, sheetXM)), houseTop(boat, sheetXM));
  return [
    inked(pen, sail, { ink: 'boat', weight: 0.8, fill: 'paper', closed: false }),
    ...ties,
    hairline(pen, [on(0.24, -thick / 2), [mast.xM + mastWidthM(mast, pen) / 2, mast.footZM + 0.15]], 0.7),
    hairline(pen, [on(0.86, -thick / 2), [sheetXM, deckM]], 0.7),
  ];
}

function houseTop(boat: Boat, xM: number): number {
  const house = boat.deckhouses.find((candidate) => xM >= candidate.xForeM && xM <= candidate.xAftM);
  return house?.zTopM ?? Number.NEGATIVE_INFINITY;
}

/** One wire; with a furled headsail a slim roll along it and the drum at its foot. */
export function stayShapes(stay: Stay, pen: Pen): readonly Shape[] {
  const wire = hairline(pen, stay.points, 0.7);
  const [top, foot] = stay.points;
  if (!stay.furled || !top || !foot) return [wire];
  const lengthM = Math.hypot(top[0] - foot[0], top[1] - foot[1]);
  const normal: Metre = [(top[1] - foot[1]) / lengthM, -(top[0] - foot[0]) / lengthM];
  const on = (share: number, side: number): Metre => [
    foot[0] + (top[0] - foot[0]) * share + normal[0] * side,
    foot[1] + (top[1] - foot[1]) * share + normal[1] * side,
  ];
  const r = Math.max(0.05, 0.0045 * lengthM);
  // The drum stands a hand's breadth off the deck, the sail ends short of the head.
  const low = Math.min(0.1, 0.34 / lengthM);
  const drumM = 0.14 / lengthM;
  const sides = [on(0.9, 0), on(0.6, r), on(0.25, 1.3 * r), on(low + 0.02, 0.8 * r), on(low, 0)];
  const back = [on(low + 0.02, -0.8 * r), on(0.25, -1.3 * r), on(0.6, -r), on(0.9, 0)];
  const roll = fair([...sides, ...back]);
  const drum: readonly Metre[] = [
    on(low - drumM, -1.5 * r),
    on(low, -1.5 * r),
    on(low, 1.5 * r),
    on(low - drumM, 1.5 * r),
  ];
  return [wire, thin(pen, roll, 0.7), pane(pen, drum, 0.8)];
}

/**
 * A mast that has come down: lying aft from its foot to the water, broken at the step, a shroud trailing. A sketch of
 * what is gone, not a forecast of how it falls.
 */
export function fallenMast(mast: Mast, pen: Pen): readonly Shape[] {
  const heightM = Math.max(0.1, mast.truckZM - mast.footZM);
  const drop = Math.min(0.9, Math.max(0.06, (mast.footZM + 0.35) / heightM));
  const run = Math.sqrt(1 - drop * drop);
  const w = mastWidthM(mast, pen) / 2;
  const on = (share: number, side: number): Metre => [
    mast.xM + share * heightM * run + side * drop,
    mast.footZM + w - share * heightM * drop + side * run,
  ];
  const broken: readonly Metre[] = [on(0.015, -w), on(0.035, -w * 0.2), on(0.008, w * 0.3), on(0.025, w)];
  const tube = straight([...broken, on(1, w * 0.7), on(1, -w * 0.7)]);
  const arms = mast.spreaderZM.map((zM) => {
    const share = (zM - mast.footZM) / heightM;
    return hairline(pen, [on(share, -0.3), on(share, 0.55)], 1);
  });
  return [
    ...arms,
    thin(pen, fair([on(0.98, 0), on(0.72, 0.28), on(0.4, 0.5), on(0.12, 0.3)]), 0.7),
    inked(pen, tube, { ink: 'lost', weight: 1.2, fill: 'paper', closed: true }),
  ];
}
