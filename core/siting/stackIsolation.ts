import {
  add,
  type Complex,
  complex,
  divide,
  modulus,
  multiply,
  scale,
  squareRoot,
  subtract,
} from '../propagation/complex.ts';
import { WATERS, type Water } from '../propagation/water.ts';
import { type CollinearAntenna, collinearLengthM } from '../rf/pattern.ts';
import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';
import { couplingValidity, HALF_WAVE_OHM, type Isolation, mutualImpedanceOhm, scattering } from './coupling.ts';

/** Two upright antennas of one or more half waves each. */
export interface StackPair {
  /** MHz: 30 to 500. */
  readonly frequencyMhz: number;
  /** Distance of their axes, m: 0 to 1000. */
  readonly sideM: number;
  /** Height of the second's middle above the first's, m: -1000 to 1000. */
  readonly upM: number;
  readonly first: CollinearAntenna;
  readonly second: CollinearAntenna;
  /** What they stand over and how high the middle of the first is, m; free space when left out. */
  readonly over?: { readonly water: Water; readonly firstHeightM: number };
}

/** Most half waves for which the method was checked. */
const CHECKED_ELEMENTS = 4;
/** 1 / (2 pi e0), per S/m and MHz. */
const LOSS_CONSTANT = 1 / (2 * Math.PI * 8.8541878e-12 * 1e6);

/**
 * Isolation between two upright antennas of any number of half waves, each matched when alone, dB; its mutual impedance is that
 * at the feeds of antennas with the same current in every half wave.
 * @throws RangeError outside the spans of `StackPair`, where one would stand in the other, or with an end in the water
 * Validity: as `stackValidity` says; 1 to 4 half waves, nothing else near. Tuned alike: unlike tunings (VHF beside AIS) add 0.1 to
 * 0.5 dB that are left out.
 * Source: sum of the mutual impedances of all half waves, own resistance likewise (induced-EMF method, from memory); over
 * water plus that of the image times the Fresnel coefficient. Checked by: tests/published/coupling.test.ts (method of moments:
 * 9 gain pairs within 0.25 dB, 9 pairs over sea within 0.3 dB)
 */
export function stackIsolation(pair: StackPair): Isolation {
  requirePair(pair);
  const { first, second } = pair;
  const wavelengthM = wavelengthOf(pair);
  const side = pair.sideM / wavelengthM;
  const up = pair.upM / wavelengthM;
  const steps = stepsOf(first).flatMap((a) => stepsOf(second).map((b) => [a, up + b] as const));
  let mutualOhm = complex(0);
  for (const [low, high] of steps) mutualOhm = add(mutualOhm, mutualImpedanceOhm(side, high - low));
  if (pair.over) mutualOhm = add(mutualOhm, imageOhm(pair, side, steps));
  const [own1, own2] = [ownOhm(first), ownOhm(second)];
  const { s21 } = scattering(complex(own1), complex(own2), mutualOhm, own1, own2);
  return {
    isolationDb: -20 * Math.log10(modulus(s21)),
    mutualOhm,
    wavelengths: Math.hypot(side, up),
    validity: stackValidity(pair),
  };
}

/**
 * Whether `stackIsolation` may be used, without reckoning it: `near-field` where the nearest two half waves are too near,
 * `unchecked` beyond 8 wavelengths or 4 half waves.
 * @throws RangeError outside the spans of `StackPair`
 */
export function stackValidity(pair: StackPair): Isolation['validity'] {
  requirePair(pair);
  const wavelengthM = wavelengthOf(pair);
  const [side, up] = [pair.sideM / wavelengthM, pair.upM / wavelengthM];
  let nearest = Number.POSITIVE_INFINITY;
  for (const a of stepsOf(pair.first))
    for (const b of stepsOf(pair.second)) nearest = Math.min(nearest, Math.abs(up + b - a));
  if (couplingValidity(side, nearest) === 'near-field') return 'near-field';
  if (Math.max(pair.first.elements, pair.second.elements) > CHECKED_ELEMENTS) return 'unchecked';
  return couplingValidity(side, Math.abs(up));
}

const wavelengthOf = ({ frequencyMhz }: StackPair): number => SPEED_OF_LIGHT_M_PER_S / (frequencyMhz * 1e6);

/** Heights of the half waves about the middle of their antenna, wavelengths. */
function stepsOf({ elements, pitchWavelengths }: CollinearAntenna): readonly number[] {
  return Array.from({ length: elements }, (_, i) => (i - (elements - 1) / 2) * pitchWavelengths);
}

/** Resistance of the whole antenna alone, ohm: every half wave's own and what each gets from each other. */
function ownOhm({ elements, pitchWavelengths }: CollinearAntenna): number {
  let sum = elements * HALF_WAVE_OHM;
  for (let apart = 1; apart < elements; apart += 1)
    sum += 2 * (elements - apart) * mutualImpedanceOhm(0, apart * pitchWavelengths).re;
  return sum;
}

/** What comes by way of the water: each half wave's image, as strong as flat water reflects under that angle. */
function imageOhm(pair: StackPair, side: number, steps: readonly (readonly [number, number])[]): Complex {
  const { water, firstHeightM } = pair.over ?? { water: 'sea' as const, firstHeightM: 0 };
  const twice = (2 * firstHeightM) / wavelengthOf(pair);
  return steps.reduce((sum, [low, high]) => {
    const heights = twice + low + high;
    const image = mutualImpedanceOhm(side, heights);
    return add(sum, multiply(image, reflection(water, pair.frequencyMhz, Math.atan2(heights, side))));
  }, complex(0));
}

/** Fresnel coefficient of flat water for vertical polarisation, time factor exp(+jwt). */
function reflection(water: Water, frequencyMhz: number, elevationRad: number): Complex {
  const { permittivity, conductivitySPerM } = WATERS[water];
  const eta = complex(permittivity, (-LOSS_CONSTANT * conductivitySPerM) / frequencyMhz);
  const root = squareRoot(subtract(eta, complex(Math.cos(elevationRad) ** 2)));
  const up = scale(eta, Math.sin(elevationRad));
  return divide(subtract(up, root), add(up, root));
}

function requirePair(pair: StackPair): void {
  requireSpan('frequencyMhz', pair.frequencyMhz, 30, 500);
  requireSpan('sideM', pair.sideM, 0, 1000);
  requireSpan('upM', pair.upM, -1000, 1000);
  const wavelengthM = wavelengthOf(pair);
  // Refuses an antenna that is none, too.
  const [half1, half2] = [pair.first, pair.second].map((stack) => collinearLengthM(stack, wavelengthM) / 2);
  if (!pair.over) return;
  const lowest = Math.min(pair.over.firstHeightM - (half1 ?? 0), pair.over.firstHeightM + pair.upM - (half2 ?? 0));
  if (!(lowest > 0)) throw new RangeError('Both antennas must stand clear of the water.');
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
