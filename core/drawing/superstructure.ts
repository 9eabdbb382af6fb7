import type { Boat } from '../model/boat.ts';
import { fair, frame, joined, type Metre, sampled, straight } from './curve.ts';
import { fittingShapes } from './fittings.ts';
import { type HullForm, hullForm, sheerZM } from './hullLines.ts';
import { hairline, inked, outline, type Pen, pane, thin } from './pen.ts';
import type { Shape } from './types.ts';

/** Deckhouses and fittings, those behind first. */
export function superstructure(boat: Boat, pen: Pen): readonly Shape[] {
  const houses = boat.deckhouses.flatMap((house) => deckhouse(boat, house, pen));
  return [
    ...houses,
    ...topsideLights(boat, pen),
    ...boat.fittings.flatMap((fitting) => fittingShapes(boat, fitting, pen)),
  ];
}

/** Windows in the topsides, as each form of hull has them: from, to, height as a share of the freeboard there. */
const LIGHTS: Partial<Record<HullForm, readonly (readonly [fromShare: number, toShare: number])[]>> = {
  'fin-keel': [[0.42, 0.54]],
  catamaran: [
    [0.3, 0.4],
    [0.44, 0.5],
    [0.62, 0.72],
  ],
  planing: [
    [0.2, 0.255],
    [0.29, 0.345],
    [0.38, 0.435],
  ],
};

function topsideLights(boat: Boat, pen: Pen): readonly Shape[] {
  return (LIGHTS[hullForm(boat)] ?? []).map(([from, to]) => {
    const xM = ((from + to) / 2) * boat.loaM;
    const zM = 0.66 * sheerZM(boat, xM);
    const heightM = Math.min(0.24, 0.15 * boat.freeboardMidM);
    return inked(pen, roundedPane(xM, zM, (to - from) * boat.loaM, heightM), {
      ink: 'boat-faint',
      weight: 0.8,
      fill: 'none',
      closed: true,
    });
  });
}

type House = Boat['deckhouses'][number];

/** The foot of a house along the deck, from aft to fore, so that it closes on the sheer. */
function foot(boat: Boat, fromXM: number, toXM: number) {
  return sampled((xM) => sheerZM(boat, xM), fromXM, toXM, 5);
}

function deckhouse(boat: Boat, house: House, pen: Pen): readonly Shape[] {
  switch (hullForm(boat)) {
    case 'planing':
      return sportHouse(boat, house, pen);
    case 'displacement':
      return motorHouse(boat, house, pen);
    case 'catamaran':
      return saloon(boat, house, pen);
    default:
      return coachroof(boat, house, pen);
  }
}

/** Low house of a sailing boat: sloping front, cambered top, portlights, hatches, and the cockpit coaming behind it. */
function coachroof(boat: Boat, house: House, pen: Pen): readonly Shape[] {
  const { xForeM: fore, xAftM: aft, zTopM: top } = house;
  const lengthM = aft - fore;
  const foreDeckM = sheerZM(boat, fore);
  const heightM = Math.max(0.05, top - sheerZM(boat, (fore + aft) / 2));
  const frontM = Math.min(0.3 * lengthM, 2.4 * heightM);
  const body = joined(
    fair([
      [fore, foreDeckM],
      [fore + 0.35 * frontM, foreDeckM + 0.62 * (top - foreDeckM)],
      [fore + frontM, top - 0.04 * heightM],
      [fore + 0.55 * lengthM, top],
      [aft - 0.12 * heightM, top - 0.03 * heightM],
    ]),
    foot(boat, aft + 0.1 * heightM, fore),
  );
  const coaming = fair([
    [aft + 0.04 * heightM, sheerZM(boat, aft) + 0.55 * heightM],
    [aft + 0.35 * (boat.loaM - aft), sheerZM(boat, aft) + 0.42 * heightM],
    [aft + 0.72 * (boat.loaM - aft), sheerZM(boat, boat.loaM * 0.9) + 0.3 * heightM],
    [aft + 0.78 * (boat.loaM - aft), sheerZM(boat, boat.loaM * 0.9)],
  ]);
  return [
    outline(pen, coaming, 'none', 0.8),
    outline(pen, body, 'paper', 1),
    ...portlights(boat, house, pen, fore + frontM * 1.05),
    ...hatch(pen, fore + 0.34 * lengthM, top, 0.055 * boat.loaM, 0.1 * heightM + 0.04),
    ...hatch(pen, aft - 0.075 * boat.loaM - 0.1 * heightM, top, 0.07 * boat.loaM, 0.12 * heightM + 0.04),
    ...hatch(pen, fore * 0.62, sheerZM(boat, fore * 0.62), 0.05 * boat.loaM, 0.09),
  ];
}

function portlights(boat: Boat, house: House, pen: Pen, fromXM: number): readonly Shape[] {
  const heightM = house.zTopM - sheerZM(boat, (house.xForeM + house.xAftM) / 2);
  const spanM = house.xAftM - 0.25 - fromXM;
  if (heightM < 0.2 || spanM < 0.6) return [];
  const count = Math.max(2, Math.min(6, Math.round(spanM / Math.max(0.75, 0.075 * boat.loaM))));
  const pitchM = spanM / count;
  const tallM = Math.min(0.36 * heightM, 0.26);
  return Array.from({ length: count }, (_, index) => {
    const xM = fromXM + pitchM * (index + 0.5);
    const zM = sheerZM(boat, xM) + 0.56 * (house.zTopM - sheerZM(boat, xM));
    return inked(pen, roundedPane(xM, zM, 0.66 * pitchM, tallM), {
      ink: 'boat-faint',
      weight: 0.8,
      fill: 'paper',
      closed: true,
    });
  });
}

/** A window with round ends. */
function roundedPane(xM: number, zM: number, lengthM: number, heightM: number) {
  const [a, b, h] = [xM - lengthM / 2, xM + lengthM / 2, heightM / 2];
  const r = Math.min(h, lengthM / 3);
  const bow = 0.45 * r;
  return {
    start: [a + r, zM + h] as Metre,
    pieces: [
      { to: [b - r, zM + h] as Metre },
      { to: [b, zM] as Metre, first: [b - bow, zM + h] as Metre, second: [b, zM + bow] as Metre },
      { to: [b - r, zM - h] as Metre, first: [b, zM - bow] as Metre, second: [b - bow, zM - h] as Metre },
      { to: [a + r, zM - h] as Metre },
      { to: [a, zM] as Metre, first: [a + bow, zM - h] as Metre, second: [a, zM - bow] as Metre },
      { to: [a + r, zM + h] as Metre, first: [a, zM + bow] as Metre, second: [a + bow, zM + h] as Metre },
    ],
  };
}

function hatch(pen: Pen, xM: number, zM: number, lengthM: number, heightM: number): readonly Shape[] {
  if (xM < 0.2) return [];
  return [
    pane(pen, [
      [xM, zM - 0.02],
      [xM + 0.06 * lengthM, zM + heightM],
      [xM + 0.96 * lengthM, zM + heightM],
      [xM + lengthM, zM - 0.02],
    ]),
  ];
}

/** Saloon on a bridge deck: long raked front, one band of windows, roof carried out over the cockpit. */
function saloon(boat: Boat, house: House, pen: Pen): readonly Shape[] {
  const { xForeM: fore, xAftM: aft, zTopM: top } = house;
  const lengthM = aft - fore;
  const base = (xM: number): number => sheerZM(boat, xM);
  const heightM = Math.max(0.1, top - base(fore));
  const body = joined(
    fair([
      [fore, base(fore)],
      [fore + 0.14 * lengthM, base(fore) + 0.42 * heightM],
      [fore + 0.3 * lengthM, top - 0.09 * heightM],
      [fore + 0.48 * lengthM, top],
      [aft - 0.02 * lengthM, top - 0.05 * heightM],
    ]),
    straight([
      [aft + 0.02 * lengthM, top - 0.16 * heightM],
      [aft - 0.06 * lengthM, base(aft - 0.06 * lengthM)],
    ]),
    foot(boat, aft - 0.06 * lengthM, fore),
  );
  const low = (share: number): Metre => [fore + share * lengthM, base(fore) + 0.36 * heightM];
  const high = (share: number): Metre => [fore + share * lengthM, top - 0.2 * heightM];
  const band = [low(0.135), high(0.28), high(0.86), low(0.9)] as const;
  const mullions = [0.36, 0.54, 0.72].map((share) => hairline(pen, [low(share - 0.015), high(share)], 0.8));
  return [outline(pen, body, 'paper', 1), pane(pen, band, 0.8), ...mullions];
}

/** House of a fast motor boat: long raked screen, one sweep of side windows, roof carried aft over the cockpit. */
function sportHouse(boat: Boat, house: House, pen: Pen): readonly Shape[] {
  const { xForeM: fore, xAftM: aft, zTopM: top } = house;
  const lengthM = aft - fore;
  const deck = (share: number): number => sheerZM(boat, fore + share * lengthM);
  const heightM = Math.max(0.1, top - deck(0));
  const at = (share: number, up: number): Metre => [fore + share * lengthM, deck(share) + up * (top - deck(share))];
  const body = joined(
    fair([at(0, 0), at(0.1, 0.3), at(0.22, 0.64), at(0.31, 0.88), at(0.38, 0.97)]),
    fair([at(0.38, 0.97), at(0.55, 1), at(0.8, 0.99), at(1, 0.95), at(1.09, 0.91)]),
    straight([at(1.08, 0.86), at(0.98, 0.83)]),
    fair([at(0.98, 0.83), at(0.945, 0.55), at(0.9, 0.24), at(0.88, 0)]),
    foot(boat, fore + 0.88 * lengthM, fore),
  );
  const screen = fair([at(0.13, 0.38), at(0.24, 0.66), at(0.33, 0.87)]);
  const windows = joined(
    fair([at(0.19, 0.42), at(0.28, 0.66), at(0.37, 0.84)]),
    fair([at(0.37, 0.84), at(0.55, 0.86), at(0.76, 0.83)]),
    fair([at(0.76, 0.83), at(0.85, 0.68), at(0.86, 0.5)]),
    fair([at(0.86, 0.5), at(0.6, 0.43), at(0.19, 0.42)]),
  );
  const mullions = [0.42, 0.62].map((share) => hairline(pen, [at(share, 0.43), at(share + 0.04, 0.85)], 0.9));
  const crease = fair([at(0.06, 0.17), at(0.4, 0.24), at(0.9, 0.26)]);
  return [
    outline(pen, body, 'paper', 1.1),
    thin(pen, screen, 0.8),
    inked(pen, windows, { ink: 'boat', weight: 0.8, fill: 'paper', closed: true }),
    ...mullions,
    ...(heightM > 0.5 ? [thin(pen, crease, 0.6)] : []),
  ];
}

/** House of a displacement motor boat: upright, a row of windows, roof with an eyebrow. */
function motorHouse(boat: Boat, house: House, pen: Pen): readonly Shape[] {
  const { xForeM: fore, xAftM: aft, zTopM: top } = house;
  const base = (xM: number): number => sheerZM(boat, xM);
  const heightM = Math.max(0.1, top - base((fore + aft) / 2));
  const pilot = !boat.fittings.some((fitting) => fitting.kind === 'wheelhouse' && fitting.xForeM < aft);
  const lean = pilot ? 0.07 * heightM : 0;
  const roofM = Math.min(0.09, 0.06 * heightM);
  const waist = base(fore) + 0.4 * (top - base(fore));
  const body = joined(
    straight([
      [fore, base(fore)],
      [fore, waist],
      [fore - lean, top - roofM],
      [aft, top - roofM],
    ]),
    foot(boat, aft, fore),
  );
  const roof = straight([
    [fore - lean - 0.12 * heightM, top - roofM],
    [fore - lean - 0.1 * heightM, top],
    [aft + 0.16 * heightM, top],
    [aft + 0.18 * heightM, top - roofM],
  ]);
  const moulding = hairline(
    pen,
    [
      [fore, waist - 0.06],
      [aft, base(aft) + 0.36 * (top - base(aft))],
    ],
    0.6,
  );
  return [
    outline(pen, body, 'paper', 1.1),
    outline(pen, roof, 'paper', 1.1),
    moulding,
    ...sideWindows(boat, house, pen, pilot),
  ];
}

/** Windows aft of a wheelhouse; without one, a pilot's windows, a door and then the saloon's. */
function sideWindows(boat: Boat, house: House, pen: Pen, pilot: boolean): readonly Shape[] {
  const { xForeM: fore, xAftM: aft, zTopM: top } = house;
  const base = (xM: number): number => sheerZM(boat, xM);
  const high = top - 0.15 * (top - base((fore + aft) / 2));
  const opening = (a: number, b: number, low: number, upper = high): Shape => {
    const at = frame(a, low, b - a, upper - low);
    return pane(pen, at('0 0, 0 1, 1 1, 1 0'), 0.8);
  };
  const low = (xM: number): number => base(xM) + 0.48 * (top - base(xM));
  const window = (a: number, b: number): Shape => opening(a, b, Math.max(low(a), low(b)));
  const covers = boat.fittings.filter((fitting) => fitting.kind === 'wheelhouse' && fitting.xForeM < aft);
  const shapes: Shape[] = [];
  let fromM = Math.max(fore + 0.12, ...covers.map((fitting) => fitting.xAftM + 0.15));
  if (pilot && aft - fore > 2.6) {
    const pilotM = Math.min(0.62, 0.16 * (aft - fore));
    const doorM = fromM + 2 * pilotM + 0.26;
    shapes.push(
      window(fromM, fromM + pilotM),
      window(fromM + pilotM + 0.1, fromM + 2 * pilotM + 0.1),
      opening(doorM, doorM + 0.62, base(doorM) + 0.12, high + 0.04),
      window(doorM + 0.1, doorM + 0.52),
    );
    fromM = doorM + 0.78;
  }
  const spanM = aft - 0.18 - fromM;
  if (spanM < 0.5) return shapes;
  const count = Math.max(1, Math.round(spanM / 1.15));
  const pitchM = spanM / count;
  const saloon = Array.from({ length: count }, (_, index) =>
    window(fromM + pitchM * (index + 0.06), fromM + pitchM * (index + 0.9)),
  );
  return [...shapes, ...saloon];
}
