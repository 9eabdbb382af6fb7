import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';
import {
  add,
  type Complex,
  complex,
  divide,
  modulus,
  multiply,
  ONE,
  polar,
  scale,
  squareRoot,
  subtract,
} from './complex.ts';
import { faddeeva } from './faddeeva.ts';
import { freeSpaceLossDb } from './freeSpace.ts';
import { EFFECTIVE_EARTH_RADIUS_KM, LEAST_HEIGHT_M, leastClearance } from './sphericalEarth.ts';
import { WATERS, type Water } from './water.ts';

/** 60 times the vacuum wavelength at 1 MHz, as 1/(2 pi e0), per S/m and MHz. */
const LOSS_CONSTANT = 1 / (2 * Math.PI * 8.8541878e-12 * 1e6);
/** Steeper than this the small-angle geometry is 1 % off and more. */
const STEEPEST_RAD = 0.1;

export interface TwoRayPath {
  /** Carrier, MHz: 30 to 10 000. */
  readonly frequencyMhz: number;
  /** Path length, km: from the sum of both heights to the horizon. */
  readonly distanceKm: number;
  /** Antenna heights above the water, m: 0 to 1000, at least 0.1 m taken. */
  readonly h1M: number;
  readonly h2M: number;
  /** Vertical when left out. */
  readonly polarisation?: 'vertical' | 'horizontal';
  /** Sea when left out. */
  readonly water?: Water;
  /** Root mean square of the water's height about its mean, m: 0 to 5; 0 (a mirror) when left out. */
  readonly roughnessM?: number;
}

/** What the two-ray sum went through, for tests and method notes. */
export interface TwoRayLoss {
  /** Where the water reflects, from the higher antenna, km. */
  readonly reflectionKm: number;
  /** Heights above the plane that touches the water there, higher antenna first, m. */
  readonly effectiveHeightsM: readonly [number, number];
  readonly grazingRad: number;
  readonly pathDifferenceM: number;
  readonly divergence: number;
  /** Fresnel coefficient of flat water: size, and angle in degrees. */
  readonly reflection: number;
  readonly reflectionDeg: number;
  /** Share of the reflection that roughness leaves coherent, 0 to 1. */
  readonly roughnessFactor: number;
  /** Relative to free space, dB: negative where the two rays help each other. */
  readonly lossDb: number;
  /** The same with the wave that runs along the water, dB. That wave is of smooth water whatever the roughness. */
  readonly withSurfaceWaveDb: number;
  /**
   * Whether the sum may be trusted: `near-horizon` beyond a tenth of the horizon when the rays differ by less than a sixth of
   * a wavelength (far too little loss), `steep` when they graze by more than 0.1 rad (the geometry is for small angles).
   */
  readonly validity: 'holds' | 'near-horizon' | 'steep';
}

/**
 * Loss relative to free space of a direct ray and the one the water reflects, dB. For the lobes of the curve near the boat.
 * @throws RangeError outside the spans of `TwoRayPath`: nearer than both heights together, at the horizon and beyond
 * Validity: see `TwoRayLoss.validity`. There the sum with the surface wave is within 0.1 dB of full-wave theory over smooth
 * sea; the two rays alone are within 0.3 dB from 400 MHz up and up to 3 dB off at 156 MHz, vertical.
 * Source: geometry of Rec. ITU-R P.526 section 3.2, Fresnel coefficients, divergence of Rec. ITU-R P.530 (from memory),
 * roughness exp(-g^2/2) after Ament (from memory), a sixth of a wavelength as in the IF-77 model (code of P.528), surface wave
 * after Norton in the three-term form of the ITU Ground Wave Handbook, part 1, 3.2.1.
 * Checked by: tests/published/twoRay.test.ts
 */
export function twoRay(path: TwoRayPath): TwoRayLoss {
  requireSpans(path);
  const ae = EFFECTIVE_EARTH_RADIUS_KM;
  const { distanceKm: d, frequencyMhz } = path;
  // Sorted, so that the loss is the same both ways to the last bit.
  const high = Math.max(path.h1M, path.h2M, LEAST_HEIGHT_M);
  const low = Math.max(Math.min(path.h1M, path.h2M), LEAST_HEIGHT_M);
  const horizonKm = horizonWithReach(d, high, low);
  const { d1 } = leastClearance(d, high, low, ae);
  const d2 = d - d1;
  const effectiveHigh = high - (500 * d1 * d1) / ae;
  const effectiveLow = low - (500 * d2 * d2) / ae;
  const grazingRad = (effectiveHigh + effectiveLow) / (1000 * d);
  const pathDifferenceM = (2 * effectiveHigh * effectiveLow) / (1000 * d);
  const divergence = 1 / Math.sqrt(1 + (2 * d1 * d2) / (ae * d * Math.tan(grazingRad)));
  const wavelengthM = SPEED_OF_LIGHT_M_PER_S / (frequencyMhz * 1e6);
  const g = (4 * Math.PI * (path.roughnessM ?? 0) * Math.sin(grazingRad)) / wavelengthM;
  const roughnessFactor = Math.exp((-g * g) / 2);
  const surface = surfaceOf(path, grazingRad);
  const delayed = polar(divergence, (-2 * Math.PI * pathDifferenceM) / wavelengthM);
  const coherent = scale(surface.reflection, roughnessFactor);
  const along = surfaceWave(surface, grazingRad, (2 * Math.PI * d * 1000) / wavelengthM);
  return {
    reflectionKm: d1,
    effectiveHeightsM: [effectiveHigh, effectiveLow],
    grazingRad,
    pathDifferenceM,
    divergence,
    reflection: modulus(surface.reflection),
    reflectionDeg: (Math.atan2(surface.reflection.im, surface.reflection.re) * 180) / Math.PI,
    roughnessFactor,
    lossDb: lossOfDb(add(ONE, multiply(coherent, delayed))),
    withSurfaceWaveDb: lossOfDb(add(ONE, multiply(add(coherent, along), delayed))),
    validity: validityOf(grazingRad, pathDifferenceM / wavelengthM, d / horizonKm),
  };
}

/**
 * Basic transmission loss of the two rays and the surface wave together, isotropic to isotropic, dB.
 * @throws RangeError as `twoRay`, and with the reason where the sum does not hold
 */
export function twoRayPathLossDb(path: TwoRayPath): number {
  const { withSurfaceWaveDb, validity } = twoRay(path);
  if (validity === 'near-horizon')
    throw new RangeError('The two rays differ by less than a sixth of a wavelength here: take the smooth-sea model.');
  if (validity === 'steep')
    throw new RangeError('Nearer than ten times both heights the two-ray sum does not hold: take free space.');
  return withSurfaceWaveDb + freeSpaceLossDb(path.frequencyMhz, path.distanceKm);
}

function validityOf(grazingRad: number, differenceWavelengths: number, horizonShare: number): TwoRayLoss['validity'] {
  if (grazingRad > STEEPEST_RAD) return 'steep';
  return differenceWavelengths >= 1 / 6 || horizonShare <= 0.1 ? 'holds' : 'near-horizon';
}

const lossOfDb = (field: Complex): number => -20 * Math.log10(modulus(field));

/** How smooth water meets a plane wave, time factor exp(+jwt): reflection, and the impedance of its surface over that of air. */
interface Surface {
  readonly reflection: Complex;
  readonly impedance: Complex;
}

function surfaceOf(path: TwoRayPath, grazingRad: number): Surface {
  const { permittivity, conductivitySPerM } = WATERS[path.water ?? 'sea'];
  const eta = complex(permittivity, (-LOSS_CONSTANT * conductivitySPerM) / path.frequencyMhz);
  const [sin, cos] = [Math.sin(grazingRad), Math.cos(grazingRad)];
  const root = squareRoot(subtract(eta, complex(cos * cos)));
  const impedance = path.polarisation === 'horizontal' ? root : divide(root, eta);
  const reflection = divide(subtract(complex(sin), impedance), add(complex(sin), impedance));
  return { reflection, impedance };
}

/**
 * Norton's third term over the reflected ray, (1 - R) F(p) with F = 1 - j sqrt(pi p) w(-sqrt p): what runs along the water,
 * worth decibels for low vertical antennas at VHF. -sqrt p lies above the real axis for every water, as `faddeeva` asks.
 */
function surfaceWave({ reflection, impedance }: Surface, grazingRad: number, pathRad: number): Complex {
  const sum = add(complex(Math.sin(grazingRad)), impedance);
  // sqrt p; p = -j (k r / 2)(sin psi + impedance)^2.
  const rootP = multiply(polar(Math.sqrt(pathRad / 2), -Math.PI / 4), sum);
  const attenuation = subtract(
    ONE,
    multiply(scale(complex(-rootP.im, rootP.re), Math.sqrt(Math.PI)), faddeeva(scale(rootP, -1))),
  );
  return multiply(subtract(ONE, reflection), attenuation);
}

/** The horizon, km, once the distance is known to lie where two rays exist. */
function horizonWithReach(d: number, high: number, low: number): number {
  if (d * 1000 < high + low) throw new RangeError(`Two rays need ${(high + low).toFixed(1)} m between these antennas.`);
  const rootHeights = Math.sqrt(0.001 * high) + Math.sqrt(0.001 * low);
  const horizonKm = Math.sqrt(2 * EFFECTIVE_EARTH_RADIUS_KM) * rootHeights;
  if (d >= horizonKm) throw new RangeError(`Two rays reach no farther than the horizon, ${horizonKm.toFixed(1)} km.`);
  return horizonKm;
}

function requireSpans({ frequencyMhz, distanceKm, h1M, h2M, roughnessM }: TwoRayPath): void {
  requireSpan('frequencyMhz', frequencyMhz, 30, 10_000);
  requireSpan('distanceKm', distanceKm, 0.001, 2000);
  requireSpan('h1M', h1M, 0, 1000);
  requireSpan('h2M', h2M, 0, 1000);
  requireSpan('roughnessM', roughnessM ?? 0, 0, 5);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
