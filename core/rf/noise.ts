import { cascade, lossStage, sensitivityDbm } from './cascade.ts';
import { addPowersDb, excessNoiseDb } from './decibels.ts';

/** Where the antenna stands, by the man-made noise around it. */
export type NoiseEnvironment = 'city' | 'residential' | 'rural' | 'quiet-rural';

/** Lightning noise as a person states it, above the man-made and galactic floor; the maps of P.372 are not carried. */
export type AtmosphericNoise = 'none' | 'moderate' | 'strong' | 'severe';

/** Antenna a noise field is stated for: short and over perfect ground, half wave in free space, or no particular one. */
export type FieldAntenna = 'short-monopole' | 'half-wave-dipole' | 'isotropic';

/** Noise picked up from outside: median above kT0B, and how far the 10 and 90 per cent points in time lie from it. */
export interface ExternalNoise {
  readonly medianDb: number;
  readonly upperDecileDb: number;
  readonly lowerDecileDb: number;
}

interface NoiseLaw {
  readonly c: number;
  readonly d: number;
  readonly upperDecileDb: number;
  readonly lowerDecileDb: number;
  readonly maxFrequencyMhz: number;
}

/** Man-made laws hold from here up (from memory). */
const MIN_MAN_MADE_MHZ = 0.3;
const LAWS: Readonly<Record<NoiseEnvironment, NoiseLaw>> = {
  city: { c: 76.8, d: 27.7, upperDecileDb: 11, lowerDecileDb: 6.7, maxFrequencyMhz: 250 },
  residential: { c: 72.5, d: 27.7, upperDecileDb: 10.6, lowerDecileDb: 5.3, maxFrequencyMhz: 250 },
  rural: { c: 67.2, d: 27.7, upperDecileDb: 9.2, lowerDecileDb: 4.6, maxFrequencyMhz: 250 },
  'quiet-rural': { c: 53.6, d: 28.6, upperDecileDb: 9.2, lowerDecileDb: 4.6, maxFrequencyMhz: 30 },
};
const GALACTIC: NoiseLaw = { c: 52, d: 23, upperDecileDb: 2, lowerDecileDb: 2, maxFrequencyMhz: 100 };

/** Where galactic noise has faded from the sum: a bridge of judgement, so that no level steps at the end of its law. */
const GALACTIC_FADED_MHZ = 125;
/** Lightning counts in full up to here and fades, in dB over the octave, to twice this: a bridge of judgement. */
const FULL_LIGHTNING_MHZ = 10;
/** "At night below 10 MHz add 10 to 30 dB in low latitudes": from memory, split into three by judgement. */
const ATMOSPHERIC_DB: Readonly<Record<AtmosphericNoise, number>> = { none: 0, moderate: 10, strong: 20, severe: 30 };

/** dB from noise figure and frequency to field: P.372, from memory; the test works all three out anew. */
const FIELD_CONSTANT_DB: Readonly<Record<FieldAntenna, number>> = {
  'short-monopole': 95.5,
  'half-wave-dipole': 99,
  isotropic: 96.8,
};

/**
 * Man-made noise at a lossless antenna, dB above kT0B: c - d log f.
 * @param frequencyMhz 0.3 to 250 MHz, quiet rural to 30 MHz (spans from memory)
 * @throws RangeError outside that span
 * Source: Rec. ITU-R P.372, constants as in the noise program of ITU-R Study Group 3.
 * Checked by: tests/published/noise.test.ts
 */
export function manMadeNoise(environment: NoiseEnvironment, frequencyMhz: number): ExternalNoise {
  const law = LAWS[environment];
  if (!(frequencyMhz >= MIN_MAN_MADE_MHZ && frequencyMhz <= law.maxFrequencyMhz)) {
    throw new RangeError(
      `Man-made noise (${environment}) is known from ${MIN_MAN_MADE_MHZ} to ${law.maxFrequencyMhz} MHz, not at ${frequencyMhz} MHz.`,
    );
  }
  return noiseOf(law, frequencyMhz);
}

/**
 * Noise of the galaxy at a lossless antenna, dB above kT0B: 52 - 23 log f.
 * It comes through the ionosphere only above the critical frequency foF2, which the caller knows.
 * @param frequencyMhz 0.3 to 100 MHz
 * @throws RangeError outside that span
 * Source: Rec. ITU-R P.372-16 equation 13. Checked by: tests/published/noise.test.ts
 */
export function galacticNoise(frequencyMhz: number): ExternalNoise {
  if (!(frequencyMhz >= MIN_MAN_MADE_MHZ && frequencyMhz <= GALACTIC.maxFrequencyMhz)) {
    throw new RangeError(
      `Galactic noise is known from ${MIN_MAN_MADE_MHZ} to ${GALACTIC.maxFrequencyMhz} MHz, not at ${frequencyMhz} MHz.`,
    );
  }
  return noiseOf(GALACTIC, frequencyMhz);
}

export interface NoisePlace {
  readonly environment: NoiseEnvironment;
  readonly frequencyMhz: number;
  /** Critical frequency of the ionosphere; the galaxy is heard above it only. Left out: it always is. */
  readonly foF2Mhz?: number;
  /** Lightning by category; in full to 10 MHz, gone at 20. */
  readonly atmospheric?: AtmosphericNoise;
}

/**
 * All noise from outside, dB above kT0B: man-made plus galactic power, raised by the stated lightning category. Medians and
 * deciles each add as power, as if the sources rose together, which overstates the spread where they are alike; lightning's
 * own spread is not known and not in it. P.372 combines them with more care.
 * @throws RangeError outside the span of the man-made law, or for a critical frequency that is none
 * Checked by: tests/published/noise.test.ts
 */
export function externalNoise(place: NoisePlace): ExternalNoise {
  const { environment, frequencyMhz, foF2Mhz = 0, atmospheric = 'none' } = place;
  if (!(foF2Mhz >= 0 && Number.isFinite(foF2Mhz)))
    throw new RangeError(`A critical frequency must be 0 MHz or more, not ${foF2Mhz}.`);
  const manMade = manMadeNoise(environment, frequencyMhz);
  const galactic = frequencyMhz > foF2Mhz ? galacticFactor(frequencyMhz) : 0;
  const sumDb = (manMadeUpDb: number, galacticUpDb: number): number =>
    decibels(ratio(manMade.medianDb + manMadeUpDb) + galactic * ratio(galacticUpDb));
  const floorDb = sumDb(0, 0);
  return {
    medianDb: floorDb + ATMOSPHERIC_DB[atmospheric] * lightningShare(frequencyMhz),
    upperDecileDb: sumDb(manMade.upperDecileDb, GALACTIC.upperDecileDb) - floorDb,
    lowerDecileDb: floorDb - sumDb(-manMade.lowerDecileDb, -GALACTIC.lowerDecileDb),
  };
}

/** Available noise power of a noise figure in a bandwidth, dBm: kT0B at 290 K plus the figure. @throws RangeError */
export function noisePowerDbm(noiseFigureDb: number, bandwidthHz: number): number {
  return sensitivityDbm(requireFinite(noiseFigureDb, 'A noise figure'), bandwidthHz, 0);
}

/**
 * Noise field strength, dB above 1 uV/m in the bandwidth: Fa + 20 log f + 10 log B - 95.5 (short vertical monopole over
 * perfect ground), - 99.0 (half-wave dipole in free space), - 96.8 (isotropic), all three from memory.
 * @throws RangeError unless frequency and bandwidth are above 0
 * Source: Rec. ITU-R P.372. Checked by: tests/published/noise.test.ts, which works the constants out anew.
 */
export function noiseFieldDbuvPerM(
  noiseFigureDb: number,
  frequencyMhz: number,
  bandwidthHz: number,
  antenna: FieldAntenna,
): number {
  requirePositive(frequencyMhz, 'A frequency');
  requirePositive(bandwidthHz, 'A bandwidth');
  const density = requireFinite(noiseFigureDb, 'A noise figure') + 20 * Math.log10(frequencyMhz);
  return density + 10 * Math.log10(bandwidthHz) - FIELD_CONSTANT_DB[antenna];
}

/** What a receiver has before it. */
export interface ReceivingChain {
  /** External noise, dB above kT0B; 0 is a dummy load at 290 K. */
  readonly externalDb: number;
  /** Loss between antenna and receiver, at 290 K. */
  readonly lineLossDb: number;
  readonly receiverNoiseFigureDb: number;
}

/**
 * Noise figure of the whole system at the terminals of the lossless antenna, dB: f = fa + (lc - 1) + lc (fr - 1).
 * @throws RangeError for a negative loss or receiver noise figure
 * Source: Rec. ITU-R P.372 section 2, from memory; line and receiver are Friis's cascade.
 * Checked by: tests/published/noise.test.ts
 */
export function systemNoiseFigureDb(chain: ReceivingChain): number {
  return addPowersDb(requireFinite(chain.externalDb, 'External noise'), excessNoiseDb(ownNoiseFigureDb(chain)));
}

/** By how much noise from outside spoils what the chain hears on a dummy load at 290 K, dB. Below 0 under a colder sky. */
export function desenseDb(chain: ReceivingChain): number {
  return systemNoiseFigureDb(chain) - ownNoiseFigureDb(chain);
}

/**
 * Sensitivity a receiver is left with on board, dBm at its own socket: the figure of its sheet plus what external noise
 * spoils. The sheet's figure is measured with a source at 290 K, so only the excess counts.
 * Checked by: tests/published/noise.test.ts
 */
export function effectiveSensitivityDbm(statedDbm: number, chain: ReceivingChain): number {
  return requireFinite(statedDbm, 'A sensitivity') + desenseDb(chain);
}

/** Galactic noise as a factor on kT0B, faded out above the end of its law. */
function galacticFactor(frequencyMhz: number): number {
  const end = GALACTIC.maxFrequencyMhz;
  const left = (GALACTIC_FADED_MHZ - frequencyMhz) / (GALACTIC_FADED_MHZ - end);
  return ratio(noiseOf(GALACTIC, frequencyMhz).medianDb) * Math.min(1, Math.max(0, left));
}

function lightningShare(frequencyMhz: number): number {
  return Math.min(1, Math.max(0, Math.log2((2 * FULL_LIGHTNING_MHZ) / frequencyMhz)));
}

function ownNoiseFigureDb({ lineLossDb, receiverNoiseFigureDb }: ReceivingChain): number {
  return cascade([lossStage(lineLossDb), { gainDb: 0, noiseFigureDb: receiverNoiseFigureDb }]).noiseFigureDb;
}

function noiseOf({ c, d, upperDecileDb, lowerDecileDb }: NoiseLaw, frequencyMhz: number): ExternalNoise {
  return { medianDb: c - d * Math.log10(frequencyMhz), upperDecileDb, lowerDecileDb };
}

const ratio = (db: number): number => 10 ** (db / 10);
const decibels = (factor: number): number => 10 * Math.log10(factor);

function requireFinite(value: number, what: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${what} must be a finite number, not ${value}.`);
  return value;
}

function requirePositive(value: number, what: string): void {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${what} must be above 0, not ${value}.`);
}
