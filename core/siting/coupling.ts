import { add, type Complex, complex, divide, modulus, multiply, scale, subtract } from '../propagation/complex.ts';
import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';

/** Radiation resistance of a half-wave antenna, ohm: what each is matched to when alone. */
export const HALF_WAVE_OHM = 73.13;
/** Spacing, in wavelengths, from which on the formulas were checked against full-wave results, and up to which. */
export const COUPLING_CHECKED_WAVELENGTHS = [0.1, 8] as const;

/** Where two vertical half-wave antennas stand towards each other. */
export interface AntennaPair {
  /** MHz: 1 to 10 000. */
  readonly frequencyMhz: number;
  /** Distance of their axes, m: 0 to 1000. */
  readonly sideM: number;
  /** Height of one centre above the other, m: -1000 to 1000. */
  readonly upM: number;
}

export interface Isolation {
  readonly isolationDb: number;
  readonly mutualOhm: Complex;
  /** Distance of the centres, wavelengths. */
  readonly wavelengths: number;
  /**
   * `near-field`: centres nearer than a tenth of a wavelength, or tips that all but touch; the currents are then no longer
   * those of a single antenna and the figure is not to be used. `unchecked`: beyond 8 wavelengths, where it only was not tried.
   */
  readonly validity: 'checked' | 'near-field' | 'unchecked';
}

/**
 * Isolation between two vertical half-wave antennas in free space, each matched when alone, dB.
 * @throws RangeError outside the spans of `AntennaPair`, or where one would stand in the other
 * Validity: 0.1 to 8 wavelengths, any offset; plain half-wave antennas, nothing else near. A mast between adds 7 to 14 dB, a
 * feeder run past the other antenna 6 to 11; the sea changes it by -3 to +2 dB. Antennas with gain and the sea:
 * `stackIsolation`.
 * Source: induced-EMF method with sinusoidal current (textbook, from memory). Checked by: tests/published/coupling.test.ts
 * (method of moments, -0.5 to +0.25 dB)
 */
export function halfWaveIsolation(pair: AntennaPair): Isolation {
  requirePair(pair);
  const wavelengthM = SPEED_OF_LIGHT_M_PER_S / (pair.frequencyMhz * 1e6);
  const side = pair.sideM / wavelengthM;
  const up = Math.abs(pair.upM) / wavelengthM;
  const mutualOhm = mutualImpedanceOhm(side, up);
  const own = { re: HALF_WAVE_OHM, im: 0 };
  const wavelengths = Math.hypot(side, up);
  return {
    isolationDb: -20 * Math.log10(modulus(scattering(own, own, mutualOhm, HALF_WAVE_OHM, HALF_WAVE_OHM).s21)),
    mutualOhm,
    wavelengths,
    validity: couplingValidity(side, up),
  };
}

/**
 * Mutual impedance of two parallel half-wave antennas, ohm.
 * @param side distance of the axes in wavelengths, >= 0
 * @param up offset of the centres along the axes in wavelengths
 * @throws RangeError for spacings that are no numbers, or on one axis with less than half a wavelength between the centres
 * Source: Z21 = -integral of the field of one antenna's current along the other (induced-EMF method; textbook, from memory).
 * Checked by: tests/published/coupling.test.ts (72 vectors by sine and cosine integrals)
 */
export function mutualImpedanceOhm(side: number, up: number): Complex {
  if (!(side >= 0 && Number.isFinite(side) && Number.isFinite(up)))
    throw new RangeError('Spacings must be numbers, and that of the axes 0 or more.');
  const offset = Math.abs(up);
  if (side < LEAST_SIDE && offset < 0.5)
    throw new RangeError('On one axis the centres of half-wave antennas must be half a wavelength apart or more.');
  let [re, im] = [0, 0];
  // How near a tip comes to the other antenna decides how fine the sum must be: 32 panels of eight points do for axes a
  // hundredth of a wavelength apart, two beyond a fifth, one beyond a whole one.
  const nearest = Math.hypot(side, Math.max(0, offset - 0.5));
  const panels = nearest < 0.2 ? 32 : nearest < 1 ? 2 : 1;
  const stepLength = 0.5 / panels;
  for (let panel = 0; panel < panels; panel += 1) {
    for (const [x, weight] of GAUSS_8) {
      const along = -0.25 + stepLength * (panel + 0.5 + x / 2);
      const share = ((weight * stepLength) / 2) * Math.cos(2 * Math.PI * along);
      for (const tip of [offset + along - 0.25, offset + along + 0.25]) {
        // Not Math.hypot: many times slower, and nothing here is near its limits.
        const distance = Math.sqrt(side * side + tip * tip);
        re += (share * Math.sin(2 * Math.PI * distance)) / distance;
        im += (share * Math.cos(2 * Math.PI * distance)) / distance;
      }
    }
  }
  return { re: 30 * re, im: 30 * im };
}

/** Scattering of two coupled antennas, each towards its own reference resistance. */
export interface TwoPort {
  readonly s11: Complex;
  readonly s22: Complex;
  readonly s21: Complex;
}

/**
 * S = (Z - R)(Z + R)^-1 of two coupled antennas with S21 = S12 (reciprocal), for any impedances of their own.
 * @param z11 impedance of one in the presence of the other, ohm; `z22` of the other; `z21` between them
 * @param r1 reference resistance of one, ohm, > 0; `r2` of the other
 * @throws RangeError when a reference resistance is not above 0
 */
export function scattering(z11: Complex, z22: Complex, z21: Complex, r1: number, r2: number): TwoPort {
  if (!(r1 > 0 && r2 > 0 && Number.isFinite(r1 * r2)))
    throw new RangeError('A reference resistance must be above 0 ohm.');
  const coupled = multiply(z21, z21);
  const [in1, in2] = [add(z11, complex(r1)), add(z22, complex(r2))];
  const bottom = subtract(multiply(in1, in2), coupled);
  return {
    s11: divide(subtract(multiply(add(z11, complex(-r1)), in2), coupled), bottom),
    s22: divide(subtract(multiply(in1, add(z22, complex(-r2))), coupled), bottom),
    s21: divide(scale(z21, 2 * Math.sqrt(r1 * r2)), bottom),
  };
}

/**
 * Isolation of two half-wave antennas side by side at one height, dB: a fit to `halfWaveIsolation` within 0.45 dB.
 * @throws RangeError outside 0.1 to 8 wavelengths
 */
export function sideBySideIsolationDb(wavelengths: number): number {
  requireSpan('wavelengths', wavelengths, ...COUPLING_CHECKED_WAVELENGTHS);
  return 10 * Math.log10(53.4 * wavelengths ** 2 + 13.1 * (1 - Math.exp(-wavelengths / 0.54)));
}

/**
 * Isolation of two half-wave antennas one above the other, by the distance of their centres, dB: a fit to
 * `halfWaveIsolation` within 0.45 dB. The trade's 28 + 40 log(d/wavelength) is 3 to 4 dB lower beyond 1.2 wavelengths and
 * 1 to 1.6 dB too high where the tips all but touch.
 * @throws RangeError outside 0.52 to 8 wavelengths
 */
export function collinearIsolationDb(wavelengths: number): number {
  requireSpan('wavelengths', wavelengths, TIPS_APART, COUPLING_CHECKED_WAVELENGTHS[1]);
  return 31.8 + 20 * Math.log10(wavelengths ** 2 - 1 / 8);
}

/** Axes nearer than this, in wavelengths, are one axis. */
const LEAST_SIDE = 1e-5;
/** Least distance of centres, in wavelengths, of antennas one above the other: below it the tips touch. */
const TIPS_APART = 0.52;
/** Gauss-Legendre points and weights on -1 to 1. */
const GAUSS_8: readonly (readonly [number, number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
].flatMap(([x = 0, weight = 0]) => [[-x, weight] as const, [x, weight] as const]);

/**
 * Whether the method holds for two half waves, by the distances of their axes and of their middles in wavelengths.
 * @throws RangeError when either is negative or no number
 */
export function couplingValidity(side: number, up: number): Isolation['validity'] {
  if (!(side >= 0 && up >= 0)) throw new RangeError('Distances must be 0 wavelengths or more.');
  const [nearest, farthest] = COUPLING_CHECKED_WAVELENGTHS;
  const wavelengths = Math.hypot(side, up);
  if (wavelengths < nearest || (side < nearest && up < TIPS_APART)) return 'near-field';
  return wavelengths > farthest ? 'unchecked' : 'checked';
}

function requirePair({ frequencyMhz, sideM, upM }: AntennaPair): void {
  requireSpan('frequencyMhz', frequencyMhz, 1, 10_000);
  requireSpan('sideM', sideM, 0, 1000);
  requireSpan('upM', upM, -1000, 1000);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
