import type { Boat } from '../model/boat.ts';
import { type Curve, fair, frame, joined, sampled, straight } from './curve.ts';
import { bootTop, type HullLines, outboardM, propeller, sheerZM, waterlineEnds } from './hullLines.ts';

/** Two slim hulls seen as one: plumb bows, mini-keels, stern steps; the bridge deck underside shows as a line. */
export function catamaranLines(boat: Boat): HullLines {
  const { loaM, draughtM: d } = boat;
  const { foreM, aftM } = waterlineEnds(boat);
  // Along in shares of the waterline, down in depths of the canoe body.
  const at = frame(foreM, 0, aftM - foreM, 0.52 * d);
  const bow = frame(0, 0, foreM, boat.freeboardForeM);
  const deckEndXM = loaM * 0.86;
  const outline = joined(
    fair([
      ...bow('0 0.97, 0.3 0.45, 1 0'),
      ...at('0.03 -0.5, 0.12 -0.86, 0.4 -1, 0.7 -0.82, 0.9 -0.34, 1 0'),
      [loaM, 0.12 * boat.freeboardAftM],
    ]),
    sternSteps(boat, deckEndXM),
  );
  const toDraught = frame(foreM, 0, aftM - foreM, d);
  const keel = joined(
    fair([...at('0.4 -1, 0.43 -1.45'), ...toDraught('0.46 -1')]),
    fair([...toDraught('0.62 -1'), ...at('0.645 -1.4, 0.66 -0.86')]),
  );
  const screw = frame(foreM, 0, aftM - foreM, 0.52 * d)('0.8 -1.05')[0] ?? [0, 0];
  return {
    outline,
    sheer: sampled((xM) => sheerZM(boat, xM), 0, deckEndXM),
    appendages: [keel, straight(at('0.915 -0.3, 0.92 -1.62, 0.955 -1.6, 0.972 -0.1'))],
    details: [
      ...bootTop(boat, foreM, aftM),
      sampled((xM) => sheerZM(boat, xM) * 0.84, 0.02 * loaM, deckEndXM, 6),
      bridgeDeck(boat),
      propeller(screw, 0.16 * d),
      straight(at('0.79 -0.62, 0.795 -1.05')),
    ],
  };
}

/** Three treads from near the water up to the deck. */
function sternSteps(boat: Boat, deckEndXM: number): Curve {
  const deckZM = sheerZM(boat, deckEndXM);
  const at = frame(deckEndXM, deckZM, boat.loaM - deckEndXM, 0.24 * boat.freeboardAftM - deckZM);
  return straight(at('1 1, 0.5 1, 0.42 0.66, 0.26 0.66, 0.18 0.33, 0.06 0.33, 0 0'));
}

function bridgeDeck(boat: Boat): Curve {
  const { loaM } = boat;
  const under = (xM: number): number => Math.min(0.62 * boat.freeboardMidM, sheerZM(boat, xM) - 0.15);
  return joined(
    straight([[0.27 * loaM, sheerZM(boat, 0.27 * loaM)]]),
    fair([
      [0.285 * loaM, under(0.285 * loaM) + 0.1],
      [0.32 * loaM, under(0.32 * loaM)],
      [0.8 * loaM, under(0.8 * loaM)],
      [0.845 * loaM, under(0.84 * loaM) + 0.12],
    ]),
  );
}

/** A planing motor hull: raked and flared bow, hard chine, shaft, propeller and rudder, bathing platform. */
export function planingLines(boat: Boat): HullLines {
  const { loaM, draughtM: d } = boat;
  const { foreM } = waterlineEnds(boat);
  const transomXM = loaM * 0.945;
  const fore = boat.freeboardForeM;
  const platformZM = 0.2 * boat.freeboardAftM + 0.05;
  const bow = frame(0, 0, foreM, fore);
  const below = frame(0, 0, loaM, d);
  const outline = joined(
    fair([
      ...bow('0 1, 0.46 0.58, 0.82 0.2, 1 0'),
      ...frame(foreM, 0, loaM, d)('0.035 -0.19, 0.1 -0.36'),
      ...below('0.34 -0.52, 0.5 -0.56'),
    ]),
    straight([
      ...below('0.945 -0.44'),
      [transomXM, platformZM - 0.07],
      [loaM, platformZM - 0.07],
      [loaM, platformZM],
      [transomXM, platformZM],
      [transomXM - 0.012 * loaM, sheerZM(boat, transomXM)],
    ]),
  );
  return {
    outline,
    sheer: sampled((xM) => sheerZM(boat, xM), 0, transomXM - 0.012 * loaM),
    appendages: [straight(below('0.905 -0.46, 0.9 -0.97, 0.93 -0.97, 0.935 -0.45'))],
    details: [
      ...bootTop(boat, foreM * 0.94, transomXM),
      fair([...frame(0, 0, loaM, fore)('0.06 0.6, 0.2 0.3, 0.42 0.07'), [0.65 * loaM, -0.02], [transomXM, -0.05]]),
      sampled((xM) => -0.225 * d + 0.345 * fore * (1 - xM / (0.62 * loaM)) ** 2, foreM * 1.05, 0.62 * loaM, 5),
      sampled((xM) => sheerZM(boat, xM) - 0.16 * boat.freeboardMidM, 0.012 * loaM, transomXM - 0.006 * loaM, 8),
      straight(below('0.62 -0.53, 0.86 -0.78')),
      straight(below('0.84 -0.47, 0.848 -0.76')),
      propeller([0.86 * loaM, -0.78 * d], 0.2 * d),
    ],
  };
}

/** A displacement motor hull: high bow with bulwark, deep keel, propeller in an aperture, rudder on a shoe. */
export function displacementLines(boat: Boat): HullLines {
  const { loaM, draughtM: d } = boat;
  const { foreM, aftM } = waterlineEnds(boat);
  const below = frame(0, 0, loaM, d);
  const sternTop = sheerZM(boat, loaM);
  const outline = joined(
    fair([
      ...frame(0, 0, foreM, boat.freeboardForeM)('0 1, 0.5 0.52, 1 0'),
      ...frame(foreM, 0, loaM, d)('0.035 -0.36, 0.1 -0.64, 0.2 -0.74'),
    ]),
    straight(below('0.84 -0.96, 0.955 -1, 0.955 -0.94, 0.86 -0.9')),
    fair([
      ...below('0.86 -0.9, 0.845 -0.6, 0.855 -0.3, 0.9 -0.2'),
      [aftM, 0],
      [loaM - 0.2 * (loaM - aftM) - 0.004 * loaM, 0.26 * sternTop],
    ]),
    straight([[loaM, sternTop]]),
  );
  const rudder = joined(
    straight(below('0.915 -0.16, 0.912 -0.92')),
    fair(below('0.955 -0.92, 0.962 -0.5, 0.957 -0.08')),
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
      straight(below('0.85 -0.58, 0.878 -0.58')),
    ],
  };
}

/** An open boat: curved stem, shallow body, outboard motor on the transom, sole line. */
export function openLines(boat: Boat): HullLines {
  const { loaM, draughtM: d } = boat;
  const { foreM, aftM } = waterlineEnds(boat);
  const outline = joined(
    fair([
      ...frame(0, 0, foreM, boat.freeboardForeM)('0 1, 0.5 0.55, 0.85 0.17, 1 0'),
      ...frame(foreM, 0, loaM, d)('0.04 -0.17, 0.13 -0.34'),
      ...frame(0, 0, loaM, d)('0.42 -0.5, 0.7 -0.5'),
      [Math.min(aftM, 0.97 * loaM), -0.43 * d],
    ]),
    straight([[loaM, sheerZM(boat, loaM)]]),
  );
  return {
    outline,
    sheer: sampled((xM) => sheerZM(boat, xM), 0, loaM),
    appendages: outboard(boat),
    details: [
      sampled((xM) => sheerZM(boat, xM) - 0.11 * boat.freeboardMidM - 0.03, 0.01 * loaM, loaM * 0.998, 6),
      sampled((xM) => sheerZM(boat, xM) * 0.5, foreM * 0.7, loaM * 0.985, 6),
      straight(frame(0, 0, loaM, boat.freeboardMidM)('0.22 0.62, 0.9 0.62')),
    ],
  };
}

/** Cowl, leg and propeller of an outboard, clamped to the transom; its skeg reaches the draught. */
function outboard(boat: Boat): readonly Curve[] {
  const { loaM, draughtM: d } = boat;
  const topZM = sheerZM(boat, loaM);
  const s = outboardM(boat);
  const xM = loaM + 0.06 * s;
  const cowl = frame(xM, topZM, s, s);
  const plateZM = Math.min(-0.3 * d, -0.05);
  const foot = frame(xM, plateZM, s, d);
  const leg = straight([
    ...cowl('0.14 0.12'),
    ...foot('0.22 0, 0.12 -0.26'),
    [xM + 0.3 * s, -d],
    ...foot('0.42 -0.4, 0.56 -0.3, 0.56 0'),
    ...cowl('0.56 0.12'),
  ]);
  return [
    leg,
    straight(foot('0.16 0, 0.8 0')),
    fair(cowl('-0.12 0.12, -0.16 0.6, 0.1 0.98, 0.62 0.92, 0.86 0.6, 0.74 0.12, -0.12 0.12')),
    propeller([xM + 0.6 * s, plateZM - 0.26 * d], 0.22 * d),
  ];
}
