import type { PathBudget } from '../links/types.ts';
import type { Project } from '../model/project.ts';
import { freeSpaceLossDb } from '../propagation/freeSpace.ts';
import { LEAST_HEIGHT_M, type SeaPath, sphericalEarthLoss } from '../propagation/sphericalEarth.ts';
import { SCATTER_LEAST_HEIGHT_M, seaMedianLoss } from '../propagation/troposcatter.ts';
import { twoRay } from '../propagation/twoRay.ts';
import { timeVariabilityDb } from '../propagation/variability.ts';
import { solveAgain } from './ranges.ts';
import { requireTrialState } from './trial.ts';
import { AT_REST, type LevelPoint, type RangeResult, type TrialState } from './types.ts';

export interface LevelCurveOptions {
  /** First and last distance, km; 0.1 and a little beyond the typical range when left out. */
  readonly fromKm?: number;
  readonly toKm?: number;
  /** Number of points, 2 to 2000; 120 when left out. */
  readonly points?: number;
  readonly spacing?: 'linear' | 'logarithmic';
  /** Upright, full power, the median when left out. */
  readonly state?: TrialState;
}

/** Level against distance at whichever receiver gives out first, with what it is held against. */
export interface LevelCurve {
  /** The range of this state. */
  readonly range: RangeResult;
  readonly points: readonly LevelPoint[];
  /** The limiting receiver's stated sensitivity: the curve meets it at the typical range. */
  readonly sensitivityDbm: number;
  /** Sensitivity plus margin: the curve meets it at the dependable range. */
  readonly dependableDbm: number;
  readonly horizonKm: number;
  /** How far `lowDbm` and `highDbm` lie from the level, dB. */
  readonly bandDb: number;
}

/** Highest antenna the two rays, and the scatter, are reckoned for, m. */
const TWO_RAY_HIGHEST_M = 1000;
const SCATTER_HIGHEST_M = 3000;

/**
 * The level curve of one range in a state of heel, power and time.
 * @throws RangeError for distances that are not above 0 and rising, a count of points out of span, a range of another
 * project, or a state outside the spans of `TrialState`
 */
export function levelCurve(
  project: Project,
  paths: readonly PathBudget[],
  range: RangeResult,
  options: LevelCurveOptions = {},
): LevelCurve {
  const { state = AT_REST } = options;
  requireTrialState(state);
  const { limiting, range: solved, station, own } = solveAgain(project, paths, range, state);
  const sensitivity = limiting.terms.find(({ key }) => key.endsWith('sensitivity'));
  const sensitivityDbm = 0 - (sensitivity?.value ?? 0);
  const sea: Sea = {
    path: { frequencyMhz: own.frequencyMhz, h1M: own.heightM, h2M: station.antennaHeightM },
    sentDbm: sensitivityDbm + limiting.maxLossDb,
    bandDb: limiting.bandDb,
    timePercent: state.timePercent,
  };
  return {
    range: solved,
    points: distancesKm(solved, options).map((distanceKm) => pointAt(sea, distanceKm)),
    sensitivityDbm,
    dependableDbm: sensitivityDbm + solved.marginDb,
    horizonKm: solved.horizonKm,
    bandDb: limiting.bandDb,
  };
}

interface Sea {
  readonly path: Omit<SeaPath, 'distanceKm'>;
  /** Level that would arrive if nothing lay between the antennas, dBm. */
  readonly sentDbm: number;
  readonly bandDb: number;
  readonly timePercent: number;
}

function pointAt({ path, sentDbm, bandDb, timePercent }: Sea, distanceKm: number): LevelPoint {
  const { frequencyMhz, h1M, h2M } = path;
  const at: SeaPath = { frequencyMhz, h1M, h2M, distanceKm };
  const freeDb = freeSpaceLossDb(frequencyMhz, distanceKm);
  const { lossDb, horizonKm } = sphericalEarthLoss(at);
  const levelDbm = sentDbm - freeDb - lossDb - timeVariabilityDb(at, timePercent);
  const twoRayDb = distanceKm < horizonKm ? twoRayLossDb(at) : null;
  const scatterDb = scatterLossDb(at);
  return {
    distanceKm,
    levelDbm,
    lowDbm: levelDbm - bandDb,
    highDbm: levelDbm + bandDb,
    twoRayDbm: twoRayDb === null ? null : sentDbm - freeDb - twoRayDb,
    scatterDbm: scatterDb === null ? null : sentDbm - scatterDb,
  };
}

/**
 * Two rays with the wave along the water over free space, dB, within the horizon where that sum holds, at any frequency: with the wave along the water it is within
 * 0.1 dB of full-wave theory at VHF as well. Two rays alone would be decibels off there, and are not drawn.
 */
function twoRayLossDb(path: SeaPath): number | null {
  const { distanceKm, h1M, h2M, frequencyMhz } = path;
  const highM = Math.max(h1M, h2M, LEAST_HEIGHT_M);
  const lowM = Math.max(Math.min(h1M, h2M), LEAST_HEIGHT_M);
  if (highM > TWO_RAY_HIGHEST_M || distanceKm * 1000 < highM + lowM) return null;
  const { withSurfaceWaveDb, validity } = twoRay({ frequencyMhz, distanceKm, h1M, h2M });
  return validity === 'holds' ? withSurfaceWaveDb : null;
}

/** Both antennas at 10 m or more: below, measured curves lose 10 dB more than the formula knows of. */
function scatterLossDb(path: SeaPath): number | null {
  const low = Math.min(path.h1M, path.h2M);
  const high = Math.max(path.h1M, path.h2M);
  return low >= SCATTER_LEAST_HEIGHT_M && high <= SCATTER_HIGHEST_M ? seaMedianLoss(path).lossDb : null;
}

function distancesKm(range: RangeResult, options: LevelCurveOptions): number[] {
  const count = options.points ?? 120;
  const fromKm = options.fromKm ?? 0.1;
  const toKm = options.toKm ?? Math.max(2 * fromKm, 1.15 * Math.max(range.typical.highKm, range.horizonKm));
  if (!(fromKm > 0 && toKm > fromKm))
    throw new RangeError(`Distances must rise from above 0 km, not ${fromKm} to ${toKm}.`);
  if (!(Number.isInteger(count) && count >= 2 && count <= 2000)) {
    throw new RangeError(`A curve has 2 to 2000 points, not ${count}.`);
  }
  return Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1);
    return options.spacing === 'logarithmic' ? fromKm * (toKm / fromKm) ** share : fromKm + share * (toKm - fromKm);
  });
}
