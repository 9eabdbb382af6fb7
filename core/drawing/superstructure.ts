import type { Boat, Fitting } from '../model/boat.ts';
import { fair, joined, type Metre, straight } from './curve.ts';
import { fittingShapes } from './fittings.ts';
import { hullForm, sheerZM } from './hullLines.ts';
import { hairline, inked, outline, type Pen, pane, thin } from './pen.ts';
import type { Shape } from './types.ts';

/** Deckhouses and fittings, those behind first. */
export function superstructure(boat: Boat, pen: Pen): readonly Shape[] {
  const houses = boat.deckhouses.flatMap((house) => deckhouse(boat, house, pen));
  return [...houses, ...boat.fittings.flatMap((fitting) => fittingShapes(boat, fitting, pen))];
}

type House = Boat['deckhouses'][number];

function deckhouse(boat: Boat, house: House, pen: Pen): readonly Shape[] {
  switch (hullForm(boat)) {
    case 'planing':
      return motorHouse(boat, house, pen, 0.55);
    case 'displacement':
      return motorHouse(boat, house, pen, 0.06);
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
    straight([[aft + 0.1 * heightM, sheerZM(boat, aft)]]),
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
      [aft - 0.06 * lengthM, base(aft)],
    ]),
  );
  const low = (share: number): Metre => [fore + share * lengthM, base(fore) + 0.36 * heightM];
  const high = (share: number): Metre => [fore + share * lengthM, top - 0.2 * heightM];
  const band = [low(0.135), high(0.28), high(0.86), low(0.9)] as const;
  const mullions = [0.36, 0.54, 0.72].map((share) => hairline(pen, [low(share - 0.015), high(share)], 0.8));
  return [outline(pen, body, 'paper', 1), pane(pen, band, 0.8), ...mullions];
}

/** House of a motor boat: windscreen raked by `rake` of its height, row of side windows, roof with an eyebrow. */
function motorHouse(boat: Boat, house: House, pen: Pen, rake: number): readonly Shape[] {
  const { xForeM: fore, xAftM: aft, zTopM: top } = house;
  const base = (xM: number): number => sheerZM(boat, xM);
  const heightM = Math.max(0.1, top - base((fore + aft) / 2));
  const screenM = rake * heightM;
  const roofM = Math.min(0.09, 0.06 * heightM);
  const body = straight([
    [fore, base(fore)],
    [fore + screenM, top - roofM],
    [aft, top - roofM],
    [aft, base(aft)],
  ]);
  const roof = straight([
    [fore + screenM - 0.1 * heightM, top - roofM],
    [fore + screenM - 0.07 * heightM, top],
    [aft + 0.16 * heightM, top],
    [aft + 0.18 * heightM, top - roofM],
  ]);
  const covered = boat.fittings.filter((fitting) => fitting.kind === 'wheelhouse');
  return [
    outline(pen, body, 'paper', 1),
    outline(pen, roof, 'paper', 1),
    ...sideWindows(house, pen, { base, heightM, screenM, covered }),
  ];
}

function sideWindows(
  house: House,
  pen: Pen,
  how: { base: (xM: number) => number; heightM: number; screenM: number; covered: readonly Fitting[] },
): readonly Shape[] {
  const { base, heightM, screenM, covered } = how;
  const fromM = Math.max(
    house.xForeM + screenM + 0.1,
    ...covered.filter((fitting) => fitting.xForeM < house.xAftM).map((fitting) => fitting.xAftM + 0.15),
  );
  const spanM = house.xAftM - 0.2 - fromM;
  const shapes: Shape[] = [];
  const lowZM = (xM: number): number => base(xM) + 0.46 * heightM;
  const highZM = house.zTopM - 0.16 * heightM;
  if (covered.length === 0) {
    // The quarter-light behind the raked screen.
    const x = (share: number): number => house.xForeM + screenM * share;
    shapes.push(
      pane(pen, [
        [x(0.56), lowZM(x(0.56))],
        [x(0.92), highZM],
        [fromM + 0.1, highZM],
        [fromM + 0.1, lowZM(fromM)],
      ]),
    );
  }
  if (spanM < 0.5) return shapes;
  const count = Math.max(1, Math.round(spanM / 1.05));
  const pitchM = spanM / count;
  for (let index = 0; index < count; index++) {
    const a = fromM + pitchM * (index + 0.14) + 0.06;
    const b = fromM + pitchM * (index + 0.96);
    shapes.push(
      pane(pen, [
        [a, lowZM(a)],
        [a + 0.05, highZM],
        [b, highZM],
        [b, lowZM(b)],
      ]),
    );
  }
  return [
    ...shapes,
    thin(
      pen,
      straight([
        [house.xForeM + 0.02, base(house.xForeM) + 0.3 * heightM],
        [house.xAftM, base(house.xAftM) + 0.3 * heightM],
      ]),
      0.5,
    ),
  ];
}
