import type { PathBudget } from '../links/types.ts';
import { marginDb } from '../model/margin.ts';
import type { Project } from '../model/project.ts';
import { reachKm } from '../propagation/reach.ts';
import { wattsToDbm } from '../rf/decibels.ts';
import { type SolvedRange, solveAgain } from './ranges.ts';
import { noiseSum } from './receiverNoise.ts';
import { linesOf } from './terms.ts';
import { requireTrialState } from './trial.ts';
import {
  AT_REST,
  type RangeExplanation,
  type RangeResult,
  type TrialState,
  type UncertaintyShare,
  type WaySum,
} from './types.ts';
import { MODEL_TOLERANCE_DB, type Way } from './ways.ts';

/**
 * Why a range is what it is, in a state of heel, roll, power and time: both directions line by line, by the very sums that
 * `solveRanges` goes by. The lines of a way add up to its `maxLossDb`; the band is the root sum of squares of the tolerances of
 * the lines of the way that gives out first, and of the model.
 *
 * External noise is not taken off: *typical* promises the stated sensitivity, and what noise takes is the own-noise item of the
 * margin, *dependable*'s affair. `noise` says what P.372 makes of it here, to be held against that item.
 * @throws RangeError for a range that is not of this project, or a state outside the spans of `TrialState`
 */
export function explainRange(
  project: Project,
  paths: readonly PathBudget[],
  range: RangeResult,
  state: TrialState = AT_REST,
): RangeExplanation {
  requireTrialState(state);
  const solved = solveAgain(project, paths, range, state);
  const { ways, limiting, own } = solved;
  return {
    range: solved.range,
    transmit: ways.transmit && waySum(solved, ways.transmit),
    receive: ways.receive && waySum(solved, ways.receive),
    bandDb: limiting.bandDb,
    uncertainty: shares(limiting),
    noise: own.receiving && noiseSum(own.receiving, project.settings.conditions),
    ...(own.service === 'cellular' ? { withoutKm: phoneInHand(solved, project, state) } : {}),
  };
}

function waySum(solved: SolvedRange, way: Way): WaySum {
  const { direction, maxLossDb, terms } = way;
  const bands = way === solved.limiting ? solved.range : solved.bandOf(way);
  return { direction, maxLossDb, lines: linesOf(terms), typical: bands.typical, dependable: bands.dependable };
}

/** Who owns the band: every tolerance by its share of the sum of squares, largest first. */
function shares(way: Way): readonly UncertaintyShare[] {
  const squares = way.bandDb ** 2;
  const owners = linesOf(way.terms.filter(({ toleranceDb }) => toleranceDb > 0)).map(
    ({ key, label, subject, toleranceDb }) => ({ key, label, subject, toleranceDb }),
  );
  const model = { key: 'model', label: ['Propagation over the sea'], subject: null, toleranceDb: MODEL_TOLERANCE_DB };
  return [...owners, model]
    .map((owner) => ({ ...owner, sharePercent: (100 * owner.toleranceDb ** 2) / squares }))
    .sort((a, b) => b.toleranceDb - a.toleranceDb);
}

/** A telephone in the hand on deck: 23 dBm, -3 dBi, 2 m above the water (common practice, no source). */
const PHONE = { powerDbm: 23, gainDbi: -3, heightM: 2 } as const;

/** The same network and the same receiver, with the telephone's own antenna, power and height. */
function phoneInHand({ own, station }: SolvedRange, project: Project, { timePercent }: TrialState) {
  const bothDb = PHONE.gainDbi + station.gainDbi - station.feederLossDb;
  const hearsDbm = own.receiving?.sensitivityDbm ?? station.sensitivityDbm;
  const outDb = PHONE.powerDbm + bothDb - station.sensitivityDbm;
  const inDb = wattsToDbm(station.cellularPowerW) + bothDb - hearsDbm;
  const maxLossDb = Math.min(outDb, inDb);
  const way = { frequencyMhz: own.frequencyMhz, h1M: PHONE.heightM, h2M: station.antennaHeightM, timePercent };
  return { typical: reachKm(way, maxLossDb), dependable: reachKm(way, maxLossDb - marginDb(project.settings.margin)) };
}
