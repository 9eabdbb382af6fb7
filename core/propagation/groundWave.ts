import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';
import {
  add,
  type Complex,
  complex,
  divide,
  exponential,
  modulus,
  multiply,
  ONE,
  polar,
  polynomial,
  scale,
  squareRoot,
  subtract,
} from './complex.ts';
import { faddeeva } from './faddeeva.ts';
import { freeSpaceLossDb } from './freeSpace.ts';
import { residueRoot } from './residueRoots.ts';

/** What the wave runs over. */
export interface Ground {
  /** Relative permittivity: 1 to 100. */
  readonly permittivity: number;
  /** Conductivity, S/m: 0.00001 to 10. */
  readonly conductivitySPerM: number;
}

/** Sea water as the program behind the curves of Rec. ITU-R P.368 takes it. */
export const SEA_GROUND: Ground = { permittivity: 70, conductivitySPerM: 5 };

export interface GroundWaveMedium {
  /** Carrier, MHz: 0.01 to 30. */
  readonly frequencyMhz: number;
  /** Sea water when left out. */
  readonly ground?: Ground;
  /** Refractivity of the air at the surface, N units: 250 to 400; 315 when left out. */
  readonly surfaceRefractivity?: number;
}

export interface GroundWavePath extends GroundWaveMedium {
  /** Path length, km: one wavelength to 10 000. */
  readonly distanceKm: number;
}

/** How much weaker the wave is than over a flat, perfectly conducting earth, and by which of the two series. */
export interface GroundWaveAttenuation {
  readonly method: 'flat-earth-with-curvature' | 'residue-series';
  readonly attenuationDb: number;
}

const VACUUM_PERMITTIVITY_F_PER_M = 8.8541878128e-12;
/** 300 mV/m at 1 km: 1 kW radiated by a short vertical monopole on perfectly conducting ground (P.368). */
const FIELD_1_KW_1_KM_DBUV_PER_M = 20 * Math.log10(300_000);
/** Waves of the residue series are summed until this share of the wave is left, e to the minus. */
const LAST_TERM_NEPERS = 16;
/** Below this size of the argument the curvature terms are summed as powers, because their closed form cancels. */
const POWER_SERIES_LIMIT = 3;
/** Powers summed: the next would be 3¹¹⁰/Γ(55.5), 2e-20. */
const POWERS = 110;

/**
 * Field strength of the ground wave, dB above 1 µV/m, both antennas at the surface, vertical polarisation.
 * @param radiatedW power RADIATED, W, > 0: the set's power times the efficiency of antenna, earth and tuner. By the P.368
 * convention 1 kW of it, from a short vertical monopole on perfect ground, gives 300 mV/m at 1 km.
 * @throws RangeError outside the spans of `GroundWavePath`
 * Source and checks: see `groundWaveAttenuation`.
 */
export function groundWaveFieldDbuvPerM(path: GroundWavePath, radiatedW: number): number {
  if (!(radiatedW > 0 && Number.isFinite(radiatedW)))
    throw new RangeError(`radiatedW must be above 0, not ${radiatedW}.`);
  const { attenuationDb } = groundWaveAttenuation(path);
  const spreadDb = 20 * Math.log10(path.distanceKm);
  return FIELD_1_KW_1_KM_DBUV_PER_M + 10 * Math.log10(radiatedW / 1000) - spreadDb - attenuationDb;
}

/**
 * Basic transmission loss by the convention of Rec. ITU-R P.368, dB: 142.0 + 20 log f − field of 1 kW, which is free space
 * plus the attenuation. NOT to be mixed with the loss of elevated antennas, whose convention lies 6.02 dB lower: over
 * perfect ground this one gives the loss of free space, while an elevated pair would see the reflection as well. Two
 * short monopoles on the sea have an end-to-end loss 3.52 dB below it.
 * @throws RangeError outside the spans of `GroundWavePath`
 * Source and checks: see `groundWaveAttenuation`.
 */
export function groundWaveLossDb(path: GroundWavePath): number {
  return freeSpaceLossDb(path.frequencyMhz, path.distanceKm) + groundWaveAttenuation(path).attenuationDb;
}

/**
 * Attenuation of the ground wave over a smooth spherical earth, relative to a flat perfectly conducting one, dB. Nearer
 * than 80 f^(−1/3) km: flat earth with two curvature terms; from there on: residue series.
 * @throws RangeError outside the spans of `GroundWavePath`
 * Validity: antennas at the surface, radiated field only (hence one wavelength and more), smooth homogeneous ground, no sky
 * wave, which takes over at night beyond some hundred km.
 * Source: Rec. ITU-R P.368-10, read through the published code of the same model (LFMF, smooth earth).
 * Checked by: tests/published/groundWave.test.ts (136 vectors, 0.02 dB)
 */
export function groundWaveAttenuation(path: GroundWavePath): GroundWaveAttenuation {
  return groundWaveCurve(path)(path.distanceKm);
}

/**
 * `groundWaveAttenuation` for many distances, km: the roots of the residue series, which do not depend on the distance and
 * are nearly all of the work, are found once.
 * @throws RangeError outside the spans of `GroundWavePath`, the handed-back function too
 */
export function groundWaveCurve(medium: GroundWaveMedium): (distanceKm: number) => GroundWaveAttenuation {
  requireMedium(medium);
  const { frequencyMhz, ground = SEA_GROUND, surfaceRefractivity = 315 } = medium;
  const radiusM = 6_370_000 / (1 - 0.04665 * Math.exp(0.005577 * surfaceRefractivity));
  const wavelengthM = SPEED_OF_LIGHT_M_PER_S / (frequencyMhz * 1e6);
  const curvature = Math.cbrt((Math.PI * radiusM) / wavelengthM);
  const q = multiply(complex(0, curvature), surfaceImpedance(frequencyMhz, ground));
  const roots: Complex[] = [];
  return (distanceKm) => {
    requireDistance(distanceKm, wavelengthM / 1000);
    const x = (curvature * distanceKm * 1000) / radiusM;
    const near = distanceKm < 80 / Math.cbrt(frequencyMhz);
    const wave = near ? flatEarthWave(x, q) : residueWave(x, q, roots);
    return {
      method: near ? 'flat-earth-with-curvature' : 'residue-series',
      attenuationDb: -20 * Math.log10(modulus(wave)),
    };
  };
}

/** Surface impedance of the ground relative to free space, vertical polarisation, time factor exp(−iωt). */
function surfaceImpedance(frequencyMhz: number, { permittivity, conductivitySPerM }: Ground): Complex {
  const omega = 2 * Math.PI * frequencyMhz * 1e6;
  const eta = complex(permittivity, conductivitySPerM / (omega * VACUUM_PERMITTIVITY_F_PER_M));
  return divide(squareRoot(subtract(eta, ONE)), eta);
}

/**
 * Flat earth with two curvature terms in 1/q³. With u = e^(iπ/4) √x q and p = −u² the flat-earth wave is
 * F = 1 + √π u w(−iu); the brackets are those of the model, with its principal root −√p written as iu.
 */
function flatEarthWave(x: number, q: Complex): Complex {
  const u = multiply(polar(Math.sqrt(x), Math.PI / 4), q);
  const inverseCube = divide(ONE, multiply(q, multiply(q, q)));
  const [flat, first, second] = modulus(u) < POWER_SERIES_LIMIT ? waveTermsByPowers(u) : waveTermsClosed(u);
  const curved = add(multiply(first, inverseCube), multiply(second, multiply(inverseCube, inverseCube)));
  return add(flat, scale(curved, 1 / 4));
}

type WaveTerms = readonly [flat: Complex, first: Complex, second: Complex];

function waveTermsClosed(u: Complex): WaveTerms {
  const rootPi = Math.sqrt(Math.PI);
  const u2 = multiply(u, u);
  const u4 = multiply(u2, u2);
  const flat = add(ONE, scale(multiply(u, faddeeva(complex(u.im, -u.re))), rootPi));
  const first = subtract(add(ONE, scale(u, rootPi)), multiply(subtract(ONE, scale(u2, 2)), flat));
  const start = add(polynomial([1, rootPi, 2, rootPi], u), scale(u4, 5 / 6));
  return [flat, first, add(start, multiply(subtract(scale(u4, 1 / 2), ONE), flat))];
}

/** Coefficients of F: √π/Γ((m + 1)/2). Those of the brackets follow from them, and their first powers vanish exactly. */
const FLAT_POWERS: readonly number[] = flatPowers();
const FIRST_POWERS = FLAT_POWERS.map((c, m) => (m < 3 ? 0 : (m - 2) * c));
const SECOND_POWERS = FLAT_POWERS.map((c, m) => (m < 6 ? 0 : (FLAT_POWERS[m - 4] ?? 0) / 2 - c));

function flatPowers(): number[] {
  const powers = [1, Math.sqrt(Math.PI)];
  for (let m = 2; m < POWERS; m += 1) powers.push((2 * (powers[m - 2] ?? 0)) / (m - 1));
  return powers;
}

function waveTermsByPowers(u: Complex): WaveTerms {
  return [polynomial(FLAT_POWERS, u), polynomial(FIRST_POWERS, u), polynomial(SECOND_POWERS, u)];
}

/** √(πx) e^(iπ/4) Σ e^(ixt)/(t − q²) over the roots t, as many as it takes; roots once found are kept. */
function residueWave(x: number, q: Complex, roots: Complex[]): Complex {
  const q2 = multiply(q, q);
  let sum = complex(0);
  for (let n = 1; ; n += 1) {
    const root = roots[n - 1] ?? residueRoot(n, q);
    roots[n - 1] = root;
    if (x * (root.im - (roots[0]?.im ?? 0)) > LAST_TERM_NEPERS) break;
    sum = add(sum, divide(exponential(complex(-x * root.im, x * root.re)), subtract(root, q2)));
  }
  return multiply(polar(Math.sqrt(Math.PI * x), Math.PI / 4), sum);
}

function requireMedium({ frequencyMhz, ground = SEA_GROUND, surfaceRefractivity = 315 }: GroundWaveMedium): void {
  requireSpan('frequencyMhz', frequencyMhz, 0.01, 30);
  requireSpan('permittivity', ground.permittivity, 1, 100);
  requireSpan('conductivitySPerM', ground.conductivitySPerM, 1e-5, 10);
  requireSpan('surfaceRefractivity', surfaceRefractivity, 250, 400);
}

function requireDistance(distanceKm: number, wavelengthKm: number): void {
  if (distanceKm >= wavelengthKm && distanceKm <= 10_000) return;
  const least = `one wavelength (${wavelengthKm.toPrecision(3)} km)`;
  throw new RangeError(`The distance of a ground wave must be ${least} to 10000 km, not ${distanceKm}.`);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
