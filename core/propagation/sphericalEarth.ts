import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';
import { freeSpaceLossDb } from './freeSpace.ts';
import { WATERS, type Water } from './water.ts';

/** Median effective earth radius, km (Rec. ITU-R P.526). */
export const EFFECTIVE_EARTH_RADIUS_KM = 8500;
/** Lower antennas are taken at this height, m: at the very water the clearance has no number and loss no longer grows steadily. */
export const LEAST_HEIGHT_M = 0.1;

export interface SeaPath {
  /** Carrier, MHz: 10 to 10 000. Meant for 100 to 3000. */
  readonly frequencyMhz: number;
  /** Path length, km: 0.001 to 2000. */
  readonly distanceKm: number;
  /** Antenna heights above the sea, m: 0 to 10 000. */
  readonly h1M: number;
  readonly h2M: number;
  /** Vertical when left out, as all marine VHF is. */
  readonly polarisation?: 'vertical' | 'horizontal';
  /** Sea when left out. */
  readonly water?: Water;
  /** Effective earth radius by the refraction of the day, km: 1000 to 100 000; 8500, the median, when left out. */
  readonly effectiveRadiusKm?: number;
}

/** What the diffraction sum went through, for tests and method notes. */
export interface SphericalEarthLoss {
  readonly branch: 'beyond-horizon' | 'clear' | 'interpolated';
  readonly horizonKm: number;
  /** Least clearance over the sea and the clearance at which diffraction ends, m; null beyond the horizon. */
  readonly clearanceM: number | null;
  readonly requiredClearanceM: number | null;
  /** First-term loss, dB, with the radius that belongs to the branch; null where it is not needed. */
  readonly firstTermDb: number | null;
  readonly lossDb: number;
}

/**
 * Median basic transmission loss over a smooth sea, isotropic to isotropic, dB: free space plus spherical-earth
 * diffraction. Continuous, and grows with distance, so ranges can be found by bisection.
 * @throws RangeError outside the spans of `SeaPath`
 * Validity: smooth sea, median refraction. No ducting, no waves as high as a wavelength, no shadow of the own boat. Carry
 * 4 dB of model tolerance at VHF. Source and checks: see `sphericalEarthLoss`.
 */
export function seaPathLossDb(path: SeaPath): number {
  return sphericalEarthLoss(path).lossDb + freeSpaceLossDb(path.frequencyMhz, path.distanceKm);
}

/**
 * Diffraction loss of a spherical sea relative to free space, dB >= 0. The Recommendation takes the first term as it is beyond
 * the horizon; below 80 MHz between low vertical antennas it is there a gain (36 dB at 10 MHz), which one term of the series
 * cannot vouch for and which would be a step, so it is taken as no loss.
 * @throws RangeError outside the spans of `SeaPath`
 * Source: Rec. ITU-R P.526 section 3.1.1 (first term, beyond the horizon) and 3.2 (any distance, 10 MHz and above), with
 * beta evaluated at every frequency as P.1812, P.452 and P.2001 do.
 * Checked by: tests/published/propagation.test.ts (144 vectors, 1e-3 dB)
 */
export function sphericalEarthLoss(path: SeaPath): SphericalEarthLoss {
  requireSpans(path);
  const { frequencyMhz, distanceKm: d } = path;
  const ae = path.effectiveRadiusKm ?? EFFECTIVE_EARTH_RADIUS_KM;
  const high = Math.max(path.h1M, path.h2M, LEAST_HEIGHT_M);
  const low = Math.max(Math.min(path.h1M, path.h2M), LEAST_HEIGHT_M);
  const horizonKm = Math.sqrt(2 * ae) * (Math.sqrt(0.001 * high) + Math.sqrt(0.001 * low));
  if (d >= horizonKm) {
    const firstTerm = firstTermDb(path, high, low, ae);
    const [clearanceM, requiredClearanceM] = [null, null];
    return {
      branch: 'beyond-horizon',
      horizonKm,
      clearanceM,
      requiredClearanceM,
      firstTermDb: firstTerm,
      lossDb: Math.max(0, firstTerm),
    };
  }
  const { clearanceM, d1 } = leastClearance(d, high, low, ae);
  const wavelengthM = SPEED_OF_LIGHT_M_PER_S / (frequencyMhz * 1e6);
  const requiredClearanceM = 17.456 * Math.sqrt((d1 * (d - d1) * wavelengthM) / d);
  if (clearanceM > requiredClearanceM) {
    return { branch: 'clear', horizonKm, clearanceM, requiredClearanceM, firstTermDb: null, lossDb: 0 };
  }
  // The radius at which this distance would be the horizon: it joins both branches without a step.
  const rootsPerKm = (Math.sqrt(high) + Math.sqrt(low)) / d;
  const firstTerm = firstTermDb(path, high, low, 500 / (rootsPerKm * rootsPerKm));
  const lossDb = Math.max(0, 1 - clearanceM / requiredClearanceM) * Math.max(0, firstTerm);
  return { branch: 'interpolated', horizonKm, clearanceM, requiredClearanceM, firstTermDb: firstTerm, lossDb };
}

/**
 * Least height of the ray over the sea, m, and its distance from the higher antenna, km (P.526 section 3.2, step 2). The sea
 * reflects towards the other antenna at that same place.
 */
export function leastClearance(d: number, high: number, low: number, ae: number): { clearanceM: number; d1: number } {
  const sum = high + low;
  const c = (high - low) / sum;
  const m = (250 * d * d) / (ae * sum);
  const inner = Math.acos(Math.min(1, ((3 * c) / 2) * Math.sqrt((3 * m) / ((m + 1) * (m + 1) * (m + 1)))));
  const b = 2 * Math.sqrt((m + 1) / (3 * m)) * Math.cos(Math.PI / 3 + inner / 3);
  const d1 = (d * (1 + b)) / 2;
  const d2 = d - d1;
  const clearanceM = ((high - (500 * d1 * d1) / ae) * d2 + (low - (500 * d2 * d2) / ae) * d1) / d;
  return { clearanceM, d1 };
}

/** First term of the residue series for one effective earth radius, dB relative to free space (P.526 section 3.1.1). */
function firstTermDb(path: SeaPath, highM: number, lowM: number, radiusKm: number): number {
  const { frequencyMhz, distanceKm } = path;
  const k = surfaceAdmittance(path, radiusKm);
  const k2 = k * k;
  const beta = (1 + 1.6 * k2 + 0.67 * k2 * k2) / (1 + 4.5 * k2 + 1.53 * k2 * k2);
  const rootF = Math.cbrt(frequencyMhz);
  const rootRadius = Math.cbrt(radiusKm);
  const x = (2.188 * beta * rootF * distanceKm) / rootRadius ** 2;
  const yPerM = (9.575e-3 * beta * rootF ** 2) / rootRadius;
  const floorDb = 2 + 20 * Math.log10(k);
  return -(
    distanceTermDb(x) +
    heightGainDb(beta * yPerM * highM, floorDb) +
    heightGainDb(beta * yPerM * lowM, floorDb)
  );
}

function surfaceAdmittance({ frequencyMhz, polarisation, water }: SeaPath, radiusKm: number): number {
  const { permittivity, conductivitySPerM } = WATERS[water ?? 'sea'];
  const s = (18000 * conductivitySPerM) / frequencyMhz;
  const horizontal = 0.36 / Math.cbrt(radiusKm * frequencyMhz) / Math.sqrt(Math.sqrt((permittivity - 1) ** 2 + s * s));
  return polarisation === 'horizontal' ? horizontal : horizontal * Math.sqrt(permittivity ** 2 + s * s);
}

function distanceTermDb(x: number): number {
  return x >= 1.6 ? 11 + 10 * Math.log10(x) - 17.6 * x : -20 * Math.log10(x) - 5.6488 * x ** 1.425;
}

/** Height gain, never below what the surface wave gives an antenna at the water. */
function heightGainDb(b: number, floorDb: number): number {
  const gainDb = b > 2 ? 17.6 * Math.sqrt(b - 1.1) - 5 * Math.log10(b - 1.1) - 8 : 20 * Math.log10(b + 0.1 * b * b * b);
  return Math.max(gainDb, floorDb);
}

function requireSpans({ frequencyMhz, distanceKm, h1M, h2M, effectiveRadiusKm }: SeaPath): void {
  requireSpan('frequencyMhz', frequencyMhz, 10, 10_000);
  requireSpan('distanceKm', distanceKm, 0.001, 2000);
  requireSpan('h1M', h1M, 0, 10_000);
  requireSpan('h2M', h2M, 0, 10_000);
  requireSpan('effectiveRadiusKm', effectiveRadiusKm ?? EFFECTIVE_EARTH_RADIUS_KM, 1000, 100_000);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
