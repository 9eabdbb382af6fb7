import type { Boat } from '../model/boat.ts';
import { fair, joined, type Metre, sampled, straight } from './curve.ts';
import { bootTop, type HullLines, outboardM, propeller, sheerZM, waterlineEnds } from './hullLines.ts';

/** Two slim hulls seen as one: plumb bows, mini-keels, stern steps; the bridge deck underside shows as a line. */
export function catamaranLines(boat: Boat): HullLines {
  const { loaM, draughtM: d } = boat;
  const { foreM, aftM } = waterlineEnds(boat);
  const bodyM = 0.52 * d;
  const at = (share: number, depth: number): Metre => [foreM + share * (aftM - foreM), -depth * bodyM];
  const deckEndXM = loaM * 0.86;
  const deckEndZM = sheerZM(boat, deckEndXM);
  const stepZM = (share: number): number => deckEndZM + (0.24 * boat.freeboardAftM - deckEndZM) * share;
  const stepXM = (share: number): number => deckEndXM + (loaM - deckEndXM) * share;
  const outline = joined(
    fair([
      [0, boat.freeboardForeM * 0.97],
      [foreM * 0.3, boat.freeboardForeM * 0.45],
      [foreM, 0],
      at(0.03, 0.5),
      at(0.12, 0.86),
      at(0.4, 1),
      at(0.7, 0.82),
      at(0.9, 0.34),
      [aftM, 0],
      [loaM, 0.12 * boat.freeboardAftM],
    ]),
    straight([
      [loaM, stepZM(1)],
      [stepXM(0.5), stepZM(1)],
      [stepXM(0.42), stepZM(0.66)],
      [stepXM(0.26), stepZM(0.66)],
      [stepXM(0.18), stepZM(0.33)],
      [stepXM(0.06), stepZM(0.33)],
      [deckEndXM, deckEndZM],
    ]),
  );
  const keel = joined(
    fair([at(0.4, 1), at(0.43, 1.45), [foreM + 0.46 * (aftM - foreM), -d]]),
    straight([[foreM + 0.62 * (aftM - foreM), -d]]),
    fair([[foreM + 0.62 * (aftM - foreM), -d], at(0.645, 1.4), at(0.66, 0.86)]),
  );
  const rudder = straight([at(0.915, 0.3), at(0.92, 1.62), at(0.955, 1.6), at(0.972, 0.1)]);
  const underside = (xM: number): number => Math.min(0.62 * boat.freeboardMidM, sheerZM(boat, xM) - 0.15);
  return {
    outline,
    sheer: sampled((xM) => sheerZM(boat, xM), 0, deckEndXM),
    appendages: [keel, rudder],
    details: [
      ...bootTop(boat, foreM, aftM),
      sampled((xM) => sheerZM(boat, xM) * 0.84, 0.02 * loaM, deckEndXM, 6),
      joined(
        straight([[0.27 * loaM, sheerZM(boat, 0.27 * loaM)]]),
        fair([
          [0.285 * loaM, underside(0.285 * loaM) + 0.1],
          [0.32 * loaM, underside(0.32 * loaM)],
          [0.8 * loaM, underside(0.8 * loaM)],
          [0.845 * loaM, underside(0.84 * loaM) + 0.12],
        ]),
      ),
      propeller(at(0.8, 1.05), 0.16 * d),
      straight([at(0.79, 0.62), at(0.795, 1.05)]),
    ],
  };
}

/** A planing motor hull: raked and flared bow, hard chine, shaft, propeller and rudder, bathing platform. */
export function planingLines(boat: Boat): HullLines {
  const { loaM, draughtM: d } = boat;
  const { foreM } = waterlineEnds(boat);
  const transomXM = loaM * 0.945;
  const fore = boat.freeboardForeM;
  const platformZM = 0.2 * boat.freeboardAftM + 0.05;
  const outline = joined(
    fair([
      [0, fore],
      [foreM * 0.46, fore * 0.58],
      [foreM * 0.82, fore * 0.2],
      [foreM, 0],
      [foreM + 0.035 * loaM, -0.19 * d],
      [foreM + 0.1 * loaM, -0.36 * d],
      [0.34 * loaM, -0.52 * d],
      [0.5 * loaM, -0.56 * d],
    ]),
    straight([
      [transomXM, -0.44 * d],
      [transomXM, platformZM - 0.07],
      [loaM, platformZM - 0.07],
      [loaM, platformZM],
      [transomXM, platformZM],
      [transomXM - 0.012 * loaM, sheerZM(boat, transomXM)],
    ]),
  );
  const chine = fair([
    [0.06 * loaM, fore * 0.6],
    [0.2 * loaM, fore * 0.3],
    [0.42 * loaM, 0.07 * fore],
    [0.65 * loaM, -0.02],
    [transomXM, -0.05],
  ]);
  const rail = (share: number, reach: number) =>
    sampled(
      (xM) => -0.5 * d * share + (0.3 + share * 0.1) * fore * (1 - xM / (reach * loaM)) ** 2,
      foreM * 1.05,
      reach * loaM,
      5,
    );
  const propXM = 0.86 * loaM;
  return {
    outline,
    sheer: sampled((xM) => sheerZM(boat, xM), 0, transomXM - 0.012 * loaM),
    appendages: [
      straight([
        [0.905 * loaM, -0.46 * d],
        [0.9 * loaM, -0.97 * d],
        [0.93 * loaM, -0.97 * d],
        [0.935 * loaM, -0.45 * d],
      ]),
    ],
    details: [
      ...bootTop(boat, foreM * 0.94, transomXM),
      chine,
      rail(0.45, 0.62),
      sampled((xM) => sheerZM(boat, xM) - 0.16 * boat.freeboardMidM, 0.012 * loaM, transomXM - 0.006 * loaM, 8),
      straight([
        [0.62 * loaM, -0.53 * d],
        [propXM, -0.78 * d],
      ]),
      straight([
        [propXM - 0.02 * loaM, -0.47 * d],
        [propXM - 0.012 * loaM, -0.76 * d],
      ]),
      propeller([propXM, -0.78 * d], 0.2 * d),
    ],
  };
}

/** A displacement motor hull: high bow with bulwark, deep keel, propeller in an aperture, rudder on a shoe. */
export function displacementLines(boat: Boat): HullLines {
  const { loaM, draughtM: d } = boat;
  const { foreM, aftM } = waterlineEnds(boat);
  const fore = boat.freeboardForeM;
  const sternTop = sheerZM(boat, loaM);
  const outline = joined(
    fair([
      [0, fore],
      [foreM * 0.5, fore * 0.52],
      [foreM, 0],
      [foreM + 0.035 * loaM, -0.36 * d],
      [foreM + 0.1 * loaM, -0.64 * d],
      [foreM + 0.2 * loaM, -0.74 * d],
    ]),
    straight([
      [0.84 * loaM, -0.96 * d],
      [0.955 * loaM, -d],
      [0.955 * loaM, -0.94 * d],
      [0.86 * loaM, -0.9 * d],
    ]),
    fair([
      [0.86 * loaM, -0.9 * d],
      [0.845 * loaM, -0.6 * d],
      [0.855 * loaM, -0.3 * d],
      [0.9 * loaM, -0.2 * d],
      [aftM, 0],
      [loaM - 0.2 * (loaM - aftM) - 0.004 * loaM, 0.26 * sternTop],
    ]),
    straight([[loaM, sternTop]]),
  );
  const rudder = joined(
    straight([
      [0.915 * loaM, -0.16 * d],
      [0.912 * loaM, -0.92 * d],
      [0.955 * loaM, -0.92 * d],
    ]),
    fair([
      [0.955 * loaM, -0.92 * d],
      [0.962 * loaM, -0.5 * d],
      [0.957 * loaM, -0.08 * d],
    ]),
  );
  const bulwark = (xM: number): number => sheerZM(boat, xM) - 0.26 * boat.freeboardMidM - 0.06;
  return {
    outline,
    sheer: sampled((xM) => sheerZM(boat, xM), 0, loaM),
    appendages: [rudder],
    details: [
      ...bootTop(boat, foreM * 0.96, loaM - 0.3 * (loaM - aftM)),
      sampled(bulwark, 0.035 * loaM, loaM * 0.995, 8),
      sampled((xM) => bulwark(xM) - 0.07, 0.04 * loaM, loaM * 0.994, 8),
      sampled((xM) => -0.46 * d - 0.1 * d * Math.sin((Math.PI * xM) / loaM), foreM + 0.06 * loaM, 0.84 * loaM, 6),
      propeller([0.878 * loaM, -0.58 * d], 0.26 * d),
      straight([
        [0.85 * loaM, -0.58 * d],
        [0.878 * loaM, -0.58 * d],
      ]),
    ],
  };
}

/** An open boat: curved stem, shallow body, outboard motor on the transom, console and thwarts. */
export function openLines(boat: Boat): HullLines {
  const { loaM, draughtM: d } = boat;
  const { foreM, aftM } = waterlineEnds(boat);
  const bodyM = 0.5 * d;
  const outline = joined(
    fair([
      [0, boat.freeboardForeM],
      [foreM * 0.62, boat.freeboardForeM * 0.45],
      [foreM, 0],
      [foreM + 0.1 * loaM, -0.62 * bodyM],
      [0.4 * loaM, -bodyM],
      [0.7 * loaM, -bodyM],
      [Math.min(aftM, 0.97 * loaM), -0.86 * bodyM],
    ]),
    straight([[loaM, sheerZM(boat, loaM)]]),
  );
  return {
    outline,
    sheer: sampled((xM) => sheerZM(boat, xM), 0, loaM),
    appendages: [...outboard(boat)],
    details: [
      sampled((xM) => sheerZM(boat, xM) - 0.11 * boat.freeboardMidM - 0.03, 0.01 * loaM, loaM * 0.998, 6),
      sampled((xM) => sheerZM(boat, xM) * 0.5, foreM * 0.7, loaM * 0.985, 6),
      straight([
        [0.22 * loaM, 0.62 * boat.freeboardMidM],
        [0.9 * loaM, 0.62 * boat.freeboardMidM],
      ]),
    ],
  };
}

/** Cowl, leg and propeller of an outboard, clamped to the transom; its skeg reaches the draught. */
function outboard(boat: Boat) {
  const { loaM, draughtM: d } = boat;
  const topZM = sheerZM(boat, loaM);
  const s = outboardM(boat);
  const x = loaM + 0.06 * s;
  const cowl = fair([
    [x - 0.12 * s, topZM + 0.12 * s],
    [x - 0.16 * s, topZM + 0.6 * s],
    [x + 0.1 * s, topZM + 0.98 * s],
    [x + 0.62 * s, topZM + 0.92 * s],
    [x + 0.86 * s, topZM + 0.6 * s],
    [x + 0.74 * s, topZM + 0.12 * s],
    [x - 0.12 * s, topZM + 0.12 * s],
  ]);
  const plateZM = Math.min(-0.3 * d, -0.05);
  const leg = straight([
    [x + 0.14 * s, topZM + 0.12 * s],
    [x + 0.22 * s, plateZM],
    [x + 0.12 * s, plateZM - 0.26 * d],
    [x + 0.3 * s, -d],
    [x + 0.42 * s, plateZM - 0.4 * d],
    [x + 0.56 * s, plateZM - 0.3 * d],
    [x + 0.56 * s, plateZM],
    [x + 0.56 * s, topZM + 0.12 * s],
  ]);
  const plate = straight([
    [x + 0.16 * s, plateZM],
    [x + 0.8 * s, plateZM],
  ]);
  return [leg, plate, cowl, propeller([x + 0.6 * s, plateZM - 0.26 * d], 0.22 * d)];
}
