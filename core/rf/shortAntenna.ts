import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';

/** A thin wire or rod, fed at its foot against the sea or a counterpoise. */
export interface BaseFedWire {
  /** Along the conductor, m, 0.1 to 200. */
  readonly lengthM: number;
  /** What of it goes upwards, 0 (lies flat) to 1 (stands): the sine of its slope. */
  readonly verticalShare: number;
  /** Of the conductor, mm, 0.1 to 100 and at most a twentieth of the length. */
  readonly radiusMm: number;
  /** 0.1 to 30 MHz. */
  readonly frequencyMhz: number;
}

/** What a tuner sees at the foot of a lossless wire. */
export interface FeedImpedance {
  readonly radiationOhm: number;
  /** Below 0: capacitive. */
  readonly reactanceOhm: number;
}

/** What lies in series with the radiation at the foot. */
export interface SeriesLoss {
  /** Earth, joints and hull, ohm, >= 0. */
  readonly groundLossOhm: number;
  /** Quality of the tuner's coil, >= 10; 200 when left out (from memory). */
  readonly coilQ?: number;
}

/** A short antenna with its losses. */
export interface ShortAntenna extends FeedImpedance {
  readonly coilOhm: number;
  /** Share of the power at the foot that is radiated, 0 to 1. */
  readonly efficiency: number;
}

/** Longest wire the closed forms hold for, wavelengths. */
export const LONGEST_WAVELENGTHS = 0.35;
/** Up to here a wire still radiates along the sea as the short ones do, wavelengths; a longer one upwards. */
export const LONGEST_GROUND_WAVE_WAVELENGTHS = 0.75;
const COIL_Q = 200;
/** Least resistance at the foot of a standing wire of a quarter wave and more: that of the quarter wave, ohm. */
const QUARTER_WAVE_OHM = 36;

/** Length in wavelengths. @throws RangeError outside the spans of `BaseFedWire` */
export function lengthInWavelengths(wire: BaseFedWire): number {
  requireWire(wire);
  return (wire.lengthM * wire.frequencyMhz * 1e6) / SPEED_OF_LIGHT_M_PER_S;
}

/**
 * Radiation resistance and reactance at the foot of a wire over a perfect ground, ohm. Sinusoidal current:
 * R = 40 tan²(kL/2) times the square of the share that stands; X = −60 (ln(L/a) − 1) cot(kL (1 + 0.115 L/λ)).
 * With this R and the losses in series the field along the sea comes out as that of a short monopole of the radiated power.
 * @throws RangeError outside the spans of `BaseFedWire` and beyond `LONGEST_WAVELENGTHS`
 * Validity: standing, R within 6 % and X within 1 % or 8 ohm to 0.35 wavelengths; at 70, 60 and 45 degrees of slope R is up
 * to 5, 9 and 15 % low at 0.28. No structure near it.
 * Source: textbook effective height, from memory; the X fit and the choice between two forms of R by a wire-grid solver.
 * Checked by: tests/published/shortAntenna.test.ts
 */
export function feedImpedance(wire: BaseFedWire): FeedImpedance {
  const waves = lengthInWavelengths(wire);
  if (waves > LONGEST_WAVELENGTHS)
    throw new RangeError(
      `The closed forms hold to ${LONGEST_WAVELENGTHS} wavelengths; ${wire.lengthM} m at ${wire.frequencyMhz} MHz is ${waves.toFixed(2)}.`,
    );
  const kL = 2 * Math.PI * waves;
  const characteristicOhm = 60 * (Math.log((wire.lengthM * 1000) / wire.radiusMm) - 1);
  return {
    radiationOhm: sinusoidalOhm(waves, wire.verticalShare),
    reactanceOhm: -characteristicOhm / Math.tan(kL * (1 + 0.115 * waves)),
  };
}

/**
 * Radiation, the coil that tunes the wire, and what share of the power gets away. The coil is |X|/Q.
 * @throws RangeError as `feedImpedance`, and for a negative ground loss or a Q below 10
 * Source: textbook series circuit and Q of 200, from memory. Checked by: tests/published/shortAntenna.test.ts
 */
export function shortAntenna(wire: BaseFedWire, { groundLossOhm, coilQ = COIL_Q }: SeriesLoss): ShortAntenna {
  requireSpan('groundLossOhm', groundLossOhm, 0, 10_000);
  requireSpan('coilQ', coilQ, 10, 100_000);
  const feed = feedImpedance(wire);
  const coilOhm = Math.abs(feed.reactanceOhm) / coilQ;
  return { ...feed, coilOhm, efficiency: share(feed.radiationOhm, groundLossOhm + coilOhm) };
}

/**
 * Least share of the power that a wire beyond the closed forms radiates. Its resistance is large there and only the ground
 * loss counts, so it is taken low: the sinusoidal form, no more than at 0.35 wavelengths (near the half wave that form
 * runs away), and beyond three quarters that of a quarter wave.
 * @throws RangeError outside the spans of `BaseFedWire`, below `LONGEST_WAVELENGTHS` and for a negative ground loss
 * Checked by: tests/published/shortAntenna.test.ts
 */
export function leastEfficiency(wire: BaseFedWire, groundLossOhm: number): number {
  requireSpan('groundLossOhm', groundLossOhm, 0, 10_000);
  const waves = lengthInWavelengths(wire);
  if (waves < LONGEST_WAVELENGTHS)
    throw new RangeError(`A wire of ${waves.toFixed(2)} wavelengths has closed forms: use shortAntenna.`);
  const { verticalShare } = wire;
  const leastOhm =
    waves <= LONGEST_GROUND_WAVE_WAVELENGTHS
      ? Math.min(sinusoidalOhm(waves, verticalShare), sinusoidalOhm(LONGEST_WAVELENGTHS, verticalShare))
      : QUARTER_WAVE_OHM * verticalShare ** 2;
  return share(leastOhm, groundLossOhm);
}

/**
 * Peak voltage against earth at the foot, V: what the lower insulator and the lead-in must bear.
 * @param watts peak envelope power at the foot, > 0
 * @throws RangeError for a power not above 0 or a negative ground loss
 * Source: Ohm's law on the series circuit.
 */
export function insulatorPeakV(antenna: ShortAntenna, groundLossOhm: number, watts: number): number {
  if (!(watts > 0 && Number.isFinite(watts))) throw new RangeError(`A power must be above 0 W, not ${watts}.`);
  requireSpan('groundLossOhm', groundLossOhm, 0, 10_000);
  const { radiationOhm, reactanceOhm, coilOhm } = antenna;
  const seriesOhm = radiationOhm + groundLossOhm;
  return Math.sqrt((2 * watts) / (seriesOhm + coilOhm)) * Math.hypot(seriesOhm, reactanceOhm);
}

/**
 * Loss of the conductor itself, ohm at the foot: skin effect along a sinusoidal current.
 * @param conductivityMSPerM copper 58, stainless 316 about 1.35 (assumed)
 * @throws RangeError as `feedImpedance`, or for a conductivity not above 0
 * Validity: within 7 % to 0.2 wavelengths, 20 % at 0.28. Checked by: tests/published/shortAntenna.test.ts
 */
export function conductorLossOhm(wire: BaseFedWire, conductivityMSPerM: number): number {
  requireSpan('conductivityMSPerM', conductivityMSPerM, 0.001, 1000);
  const kL = 2 * Math.PI * lengthInWavelengths(wire);
  if (kL > 2 * Math.PI * LONGEST_WAVELENGTHS) throw new RangeError('Too long a wire for the sinusoidal current.');
  const sigma = conductivityMSPerM * 1e6;
  const skinM = 1 / Math.sqrt(Math.PI * wire.frequencyMhz * 1e6 * 4e-7 * Math.PI * sigma);
  const ohmPerM = 1 / (2 * Math.PI * (wire.radiusMm / 1000) * sigma * skinM);
  return (ohmPerM * wire.lengthM * (0.5 - Math.sin(2 * kL) / (4 * kL))) / Math.sin(kL) ** 2;
}

function sinusoidalOhm(waves: number, verticalShare: number): number {
  return 40 * Math.tan(Math.PI * waves) ** 2 * verticalShare ** 2;
}

/** A wire that lies flat radiates nothing along the sea, with or without loss. */
function share(radiationOhm: number, lossOhm: number): number {
  return radiationOhm === 0 ? 0 : radiationOhm / (radiationOhm + lossOhm);
}

function requireWire({ lengthM, verticalShare, radiusMm, frequencyMhz }: BaseFedWire): void {
  requireSpan('lengthM', lengthM, 0.1, 200);
  requireSpan('verticalShare', verticalShare, 0, 1);
  requireSpan('radiusMm', radiusMm, 0.1, Math.min(100, lengthM * 50));
  requireSpan('frequencyMhz', frequencyMhz, 0.1, 30);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
