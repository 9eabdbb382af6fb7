import { EFFECTIVE_EARTH_RADIUS_KM, LEAST_HEIGHT_M, type SeaPath, seaPathLossDb } from './sphericalEarth.ts';

/** Refractivity of the air at sea level, N-units: common practice, no source; regions lie at about 300 to 380. */
export const SEA_LEVEL_REFRACTIVITY = 325;
/** Scatter is not to be counted on for antennas lower than this, m. */
export const SCATTER_LEAST_HEIGHT_M = 10;

export interface ScatterPath extends SeaPath {
  /** Sea-level refractivity of the air, N-units: 250 to 450; 325 when left out. */
  readonly refractivity?: number;
}

export interface SeaMedian {
  /** Free space plus diffraction, dB. */
  readonly diffractionPathDb: number;
  /** Troposcatter, dB. */
  readonly scatterPathDb: number;
  /** Both together, dB. */
  readonly lossDb: number;
  /** False where scatter takes half a decibel or more off and an antenna is below 10 m: the loss may then be 10 dB more. */
  readonly dependable: boolean;
}

/**
 * Basic transmission loss by troposcatter for half of the time, dB. Within the horizon the scatter angle is 0, as the
 * Recommendation has it, so that the curve has no step there.
 * @throws RangeError outside the spans of `ScatterPath`
 * Validity: antennas of 10 m and more. The formula hardly knows heights, yet measured curves (P.1546) lose some 10 dB more at
 * 3 m: not dependable for small craft.
 * Source: Rec. ITU-R P.1812-8 section 4.4, equations 44 and 45, at 50 % of the time.
 * Checked by: tests/published/troposcatter.test.ts
 */
export function troposcatterPathLossDb(path: ScatterPath): number {
  requireSpans(path);
  const ghz = path.frequencyMhz / 1000;
  const frequencyDb = 25 * Math.log10(ghz) - 2.5 * Math.log10(ghz / 2) ** 2;
  const airDb = 0.15 * (path.refractivity ?? SEA_LEVEL_REFRACTIVITY);
  return 190.1 + frequencyDb + 20 * Math.log10(path.distanceKm) + 0.573 * scatterAngleMrad(path) - airDb;
}

/**
 * Median basic transmission loss over sea with troposcatter, dB: the upper line, "on a good day", of a pair of high antennas.
 * @throws RangeError outside the spans of `ScatterPath`
 * Source: Rec. ITU-R P.1812-8 equation 63 over an all-sea path, with P.526 section 3 for diffraction: within 0.05 dB of its
 * whole code. Checked by: tests/published/troposcatter.test.ts
 */
export function seaMedianLoss(path: ScatterPath): SeaMedian {
  requireSpans(path);
  const diffractionPathDb = seaPathLossDb(path);
  const scatterPathDb = troposcatterPathLossDb(path);
  // Taken off the smaller one: summed as powers of ten, a very large loss would be no number.
  const apartDb = Math.abs(diffractionPathDb - scatterPathDb);
  const lossDb = Math.min(diffractionPathDb, scatterPathDb) - 5 * Math.log10(1 + 10 ** (-0.2 * apartDb));
  const high = Math.min(path.h1M, path.h2M) >= SCATTER_LEAST_HEIGHT_M;
  return { diffractionPathDb, scatterPathDb, lossDb, dependable: high || diffractionPathDb - lossDb < 0.5 };
}

/** Angle between the two horizon rays, mrad; 0 within the horizon. */
function scatterAngleMrad({ distanceKm, h1M, h2M, effectiveRadiusKm }: ScatterPath): number {
  const ae = effectiveRadiusKm ?? EFFECTIVE_EARTH_RADIUS_KM;
  const dip = (heightM: number): number => Math.sqrt((0.002 * Math.max(heightM, LEAST_HEIGHT_M)) / ae);
  // The two dips first: their sum is then the same both ways round.
  return Math.max(0, 1000 * (distanceKm / ae - (dip(h1M) + dip(h2M))));
}

function requireSpans({ frequencyMhz, distanceKm, h1M, h2M, refractivity, effectiveRadiusKm }: ScatterPath): void {
  requireSpan('frequencyMhz', frequencyMhz, 30, 6000);
  requireSpan('distanceKm', distanceKm, 0.001, 2000);
  requireSpan('h1M', h1M, 0, 3000);
  requireSpan('h2M', h2M, 0, 3000);
  requireSpan('refractivity', refractivity ?? SEA_LEVEL_REFRACTIVITY, 250, 450);
  requireSpan('effectiveRadiusKm', effectiveRadiusKm ?? EFFECTIVE_EARTH_RADIUS_KM, 1000, 100_000);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
