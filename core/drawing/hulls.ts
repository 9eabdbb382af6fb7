import type { Boat } from '../model/boat.ts';
import { type Curve, fair, frame, joined, type Metre, sampled, straight } from './curve.ts';
import { bootTop, type HullLines, hullForm, propeller, sheerZM, waterlineEnds } from './hullLines.ts';
import { catamaranLines, displacementLines, openLines, planingLines } from './hullsOther.ts';

/**
 * The profile of a hull from the boat's numbers. Length, freeboards, waterline length and draught are exact; what lies
 * between them (how full the ends, where the keel starts) is common practice for the form, without a source.
 */
export function hullLines(boat: Boat): HullLines {
  switch (hullForm(boat)) {
    case 'fin-keel':
      return finKeelLines(boat);
    case 'long-keel':
      return longKeelLines(boat);
    case 'catamaran':
      return catamaranLines(boat);
    case 'planing':
      return planingLines(boat);
    case 'displacement':
      return displacementLines(boat);
    case 'open':
      return openLines(boat);
  }
}

function finKeelLines(boat: Boat): HullLines {
  const { loaM, draughtM } = boat;
  const { foreM, aftM } = waterlineEnds(boat);
  const lengthM = aftM - foreM;
  const bodyM = Math.min(0.42 * draughtM, 0.052 * boat.lwlM);
  const body = (share: number, depth: number): Metre => [foreM + share * lengthM, -depth * bodyM];
  const transomTopM = sheerZM(boat, loaM * 0.955);
  const outline = joined(
    fair([
      ...stemPoints(boat, foreM, 0.06),
      body(0.03, 0.2),
      body(0.11, 0.5),
      body(0.26, 0.83),
      body(0.46, 1),
      body(0.64, 0.9),
      body(0.82, 0.52),
      [aftM, 0],
      [loaM - 0.02 * (loaM - aftM), 0.3 * boat.freeboardAftM],
    ]),
    // A scoop: the transom leans forward, and treads are cut into it.
    straight([
      [loaM, 0.34 * boat.freeboardAftM],
      [loaM, 0.4 * boat.freeboardAftM],
      [loaM * 0.955, transomTopM],
    ]),
  );
  const fin = finOf(boat, body);
  const rudder = spadeRudder(boat, aftM, (share) => -bodyM * (share > 0.82 ? 0.52 - (share - 0.82) * 2.9 : 0.6));
  return {
    outline,
    sheer: sampled((xM) => sheerZM(boat, xM), 0, loaM * 0.955),
    appendages: [...fin, rudder],
    details: [...bootTop(boat, foreM, loaM - 0.4 * (loaM - aftM)), treads(boat)],
  };
}

/** A tapered fin, about 17 per cent of the waterline long at the root, on a ballast bulb. */
function finOf(boat: Boat, body: (share: number, depth: number) => Metre): readonly Curve[] {
  const { draughtM } = boat;
  const chordM = 0.16 * boat.lwlM;
  const [rootXM] = body(0.37, 1);
  const rootZM = body(0.4, 0.93)[1];
  const bulbM = Math.min(0.34, 0.16 * draughtM);
  const tipXM = rootXM + 0.22 * chordM;
  const fin = straight([
    [rootXM, rootZM],
    [tipXM, -draughtM + 0.8 * bulbM],
    [tipXM + 0.72 * chordM, -draughtM + 0.8 * bulbM],
    [rootXM + chordM, rootZM],
  ]);
  const x = (share: number): number => tipXM + share * chordM;
  const bulb = fair([
    [x(-0.24), -draughtM + 0.52 * bulbM],
    [x(-0.08), -draughtM + 0.92 * bulbM],
    [x(0.3), -draughtM + bulbM],
    [x(1.12), -draughtM + 0.5 * bulbM],
    [x(0.5), -draughtM],
    [x(0), -draughtM],
    [x(-0.2), -draughtM + 0.24 * bulbM],
    [x(-0.24), -draughtM + 0.52 * bulbM],
  ]);
  return [fin, bulb];
}

function spadeRudder(boat: Boat, aftM: number, bottomZM: (share: number) => number): Curve {
  const chordM = 0.058 * boat.lwlM;
  const topXM = aftM - 0.11 * boat.lwlM;
  const depthM = -0.8 * boat.draughtM;
  const topZM = Math.min(-0.02, bottomZM(0.9));
  return joined(
    straight([
      [topXM, topZM],
      [topXM + 0.12 * chordM, depthM],
    ]),
    fair([
      [topXM + 0.12 * chordM, depthM],
      [topXM + 0.5 * chordM, depthM - 0.02 * boat.draughtM],
      [topXM + 0.82 * chordM, depthM],
    ]),
    straight([[topXM + 1.15 * chordM, topZM * 0.62]]),
  );
}

/** A traditional long keel: cutaway forefoot, straight shoe dropping aft, rudder hung on the sternpost, a counter. */
function longKeelLines(boat: Boat): HullLines {
  const { loaM, draughtM: d } = boat;
  const { foreM, aftM } = waterlineEnds(boat);
  // Along in shares of the waterline, down in draughts.
  const at = frame(foreM, 0, aftM - foreM, d);
  const counterM = loaM - aftM;
  const counter = frame(aftM, 0, counterM, boat.freeboardAftM);
  const outline = joined(
    fair([...stemPoints(boat, foreM, 0.3), ...at('0.045 -0.2, 0.12 -0.42, 0.23 -0.64, 0.36 -0.82, 0.5 -0.92')]),
    straight(at('0.5 -0.92, 0.88 -1, 0.885 -0.97, 0.905 -0.62')),
    // Propeller aperture in the deadwood.
    fair(at('0.905 -0.62, 0.872 -0.56, 0.87 -0.4, 0.918 -0.34')),
    fair([...at('0.945 -0.1, 1 0'), ...counter('0.45 0.2, 0.88 0.52')]),
    straight([[loaM, sheerZM(boat, loaM)]]),
  );
  const rudder = joined(
    straight(at('0.95 -0.1, 0.892 -0.99')),
    fair(at('0.892 -0.99, 0.93 -0.985, 0.965 -0.9, 0.985 -0.6, 0.985 -0.02')),
  );
  const strake = sampled((xM) => sheerZM(boat, xM) * 0.9, foreM * 0.27, loaM - counterM * 0.13);
  return {
    outline,
    sheer: sampled((xM) => sheerZM(boat, xM), 0, loaM),
    appendages: [rudder],
    details: [
      ...bootTop(boat, foreM, aftM + 0.25 * counterM),
      strake,
      propeller([foreM + 0.895 * (aftM - foreM), -0.49 * d], 0.1 * d),
    ],
  };
}

/** Stem from the head down to the waterline; `hollow` bends it from straight towards a clipper's curve. */
function stemPoints(boat: Boat, foreM: number, hollow: number): readonly Metre[] {
  const fore = boat.freeboardForeM;
  return [
    [0, fore],
    [foreM * (0.36 - hollow * 0.12), fore * (0.62 + hollow * 0.1)],
    [foreM * (0.72 - hollow * 0.1), fore * (0.29 + hollow * 0.06)],
    [foreM, 0],
  ];
}

/** Treads of a scoop stern. */
function treads(boat: Boat): Curve {
  const topM = sheerZM(boat, boat.loaM * 0.955);
  const x = (share: number): number => boat.loaM * (0.955 + 0.045 * share);
  const low = 0.4 * boat.freeboardAftM;
  const z = (share: number): number => topM + (low - topM) * share;
  return straight([
    [x(0), topM],
    [x(0), z(0.5)],
    [x(0.5), z(0.5)],
    [x(0.5), z(0.94)],
    [x(0.94), z(0.94)],
  ]);
}
