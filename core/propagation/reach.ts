import { seaPathLossDb } from './sphericalEarth.ts';

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
}

/**
 * Largest distance over a smooth sea at which the median loss does not exceed a limit, km: 0 when it is exceeded at a
 * metre already, `MAX_REACH_KM` when not even there.
 * @throws RangeError outside the spans of `SeaPath` or for a limit that is not finite
 * Method: loss grows with distance (tests/unit/propagation), so the crossing is single; bracketed false position in the
 * logarithm of distance (Illinois form), to 1 m. Checked by: tests/published/range.test.ts
 */
export function reachKm(reach: Reach, maxLossDb: number): number {
  if (!Number.isFinite(maxLossDb)) throw new RangeError(`A loss limit must be a finite number, not ${maxLossDb}.`);
  const excessDb = (logKm: number): number => seaPathLossDb({ ...reach, distanceKm: Math.exp(logKm) }) - maxLossDb;
  let near = Math.log(MIN_REACH_KM);
  let far = Math.log(MAX_REACH_KM);
  let nearDb = excessDb(near);
  let farDb = excessDb(far);
  if (nearDb > 0) return 0;
  if (farDb <= 0) return MAX_REACH_KM;
  let lastSide = 0;
  while (Math.exp(far) - Math.exp(near) > PRECISION_KM) {
    const share = nearDb / (nearDb - farDb);
    // A false position that hugs one end would crawl: keep it off both.
    const next = near + (far - near) * Math.min(0.98, Math.max(0.02, share));
    const nextDb = excessDb(next);
    if (Math.abs(nextDb) < PRECISION_DB) return Math.exp(next);
    const side = nextDb > 0 ? 1 : -1;
    if (side > 0) {
      far = next;
      farDb = nextDb;
      if (lastSide > 0) nearDb /= 2;
    } else {
      near = next;
      nearDb = nextDb;
      if (lastSide < 0) farDb /= 2;
    }
    lastSide = side;
  }
  return Math.exp(near);
}
