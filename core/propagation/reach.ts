import { seaPathLossDb } from './sphericalEarth.ts';
import { timeVariabilityDb } from './variability.ts';

/** Ranges are not looked for beyond this: what comes farther than this comes by ducting, not by this model. */
export const MAX_REACH_KM = 400;
const MIN_REACH_KM = 0.001;
/** Ranges are found to a metre. */
const PRECISION_KM = 0.001;
/** Over sea loss grows by 0.4 dB/km or more everywhere, so this much is a quarter of a metre. */
const PRECISION_DB = 1e-4;

export interface Reach {
  readonly frequencyMhz: number;
  readonly h1M: number;
  readonly h2M: number;
  /** Share of the time the level is to hold, per cent: 50, the median, when left out; to 99. */
  readonly timePercent?: number;
}

/** A point of the loss curve: natural logarithm of the distance in km, and the loss there. */
interface Sample {
  readonly logKm: number;
  readonly lossDb: number;
}

/**
 * Largest distance over a smooth sea at which the median loss does not exceed a limit, km: 0 when it is exceeded at a
 * metre already, `MAX_REACH_KM` when not even there.
 * @throws RangeError outside the spans of `SeaPath` or for a limit that is not finite
 * Method: see `reachSolver`. Checked by: tests/published/propagation.test.ts
 */
export function reachKm(reach: Reach, maxLossDb: number): number {
  return reachSolver(reach)(maxLossDb);
}

/**
 * `reachKm` for many limits between the same two heights. Loss grows with distance (tests/unit/propagation), so a crossing
 * is single; every point of the curve once reckoned is kept, and the next limit starts from the two points around it.
 */
export function reachSolver(reach: Reach): (maxLossDb: number) => number {
  // Written out, not spread: this is the innermost loop of every assessment, and a spread costs ten times the sum.
  const { frequencyMhz, h1M, h2M, timePercent = 50 } = reach;
  if (timePercent < 50) throw new RangeError(`A range holds for half of the time or more, not for ${timePercent} %.`);
  const at = (logKm: number): Sample => {
    const path = { frequencyMhz, h1M, h2M, distanceKm: Math.exp(logKm) };
    const varyingDb = timePercent === 50 ? 0 : timeVariabilityDb(path, timePercent);
    return { logKm, lossDb: seaPathLossDb(path) + varyingDb };
  };
  const samples: Sample[] = [at(Math.log(MIN_REACH_KM)), at(Math.log(MAX_REACH_KM))];
  return (maxLossDb) => {
    if (!Number.isFinite(maxLossDb)) throw new RangeError(`A loss limit must be a finite number, not ${maxLossDb}.`);
    const beyond = samples.findIndex(({ lossDb }) => lossDb > maxLossDb);
    if (beyond === 0) return 0;
    const [near, far] = [samples[beyond - 1], samples[beyond]];
    if (beyond < 0 || !near || !far) return MAX_REACH_KM;
    const tried: Sample[] = [];
    const logKm = crossing(at, near, far, maxLossDb, tried);
    samples.splice(beyond, 0, ...tried.sort((a, b) => a.logKm - b.logKm));
    return Math.exp(logKm);
  };
}

/** Bracketed false position in the logarithm of distance (Illinois form); what it tries is handed back for later. */
function crossing(at: (logKm: number) => Sample, from: Sample, to: Sample, maxLossDb: number, tried: Sample[]): number {
  let [near, nearDb] = [from.logKm, from.lossDb - maxLossDb];
  let [far, farDb] = [to.logKm, to.lossDb - maxLossDb];
  let lastSide = 0;
  while (Math.exp(far) - Math.exp(near) > PRECISION_KM) {
    // Kept off both ends, so that a false position that hugs one of them cannot stall.
    const share = Math.min(0.98, Math.max(0.02, nearDb / (nearDb - farDb)));
    const sample = at(near + (far - near) * share);
    const excessDb = sample.lossDb - maxLossDb;
    tried.push(sample);
    if (Math.abs(excessDb) < PRECISION_DB) return sample.logKm;
    const side = excessDb > 0 ? 1 : -1;
    if (side > 0) {
      [far, farDb] = [sample.logKm, excessDb];
      if (lastSide > 0) nearDb /= 2;
    } else {
      [near, nearDb] = [sample.logKm, excessDb];
      if (lastSide < 0) farDb /= 2;
    }
    lastSide = side;
  }
  return near;
}
