import type { PartOf } from '../model/part.ts';

export type CoaxPart = PartOf<'coax'>;

/** Share by which loss grows per kelvin: copper's resistivity slope halves under the root (maker's data sheets, from memory). */
const LOSS_PER_KELVIN = 0.002;
/** Least tolerance of a figure carried beyond the published table, per cent (high side of what trade tables disagree by). */
const EXTRAPOLATED_PERCENT = 15;

export interface CoaxLoss {
  readonly lossDb: number;
  readonly toleranceDb: number;
  /** The frequency lies outside the span of the published table. */
  readonly extrapolated: boolean;
}

/**
 * Matched attenuation of a cable, dB per 100 m: k1 sqrt(f) + k2 f, f in MHz.
 * @param temperatureC of the cable, 20 when left out; loss grows 0.2 % per kelvin
 * @throws RangeError outside the span the part's table covers (no silent extrapolation)
 * Source: two-term conductor and dielectric fit to published tables; per type in the catalogue.
 * Checked by: tests/published/coaxTables.test.ts
 */
export function attenuationDbPer100m(part: CoaxPart, frequencyMhz: number, temperatureC = 20): number {
  const { minFrequencyMhz, maxFrequencyMhz } = part.figures;
  if (!isInSpan(part, frequencyMhz)) {
    throw new RangeError(
      `${part.name} is known from ${minFrequencyMhz.value} to ${maxFrequencyMhz.value} MHz, not at ${frequencyMhz} MHz.`,
    );
  }
  return twoTermDb(part, frequencyMhz) * temperatureFactor(temperatureC);
}

/**
 * Matched loss of a length of cable, dB >= 0.
 * @throws RangeError for a negative length or outside the part's frequency span
 */
export function coaxLossDb(part: CoaxPart, lengthM: number, frequencyMhz: number, temperatureC = 20): number {
  if (!(lengthM >= 0 && Number.isFinite(lengthM)))
    throw new RangeError(`A length must be 0 m or more, not ${lengthM}.`);
  return (attenuationDbPer100m(part, frequencyMhz, temperatureC) * lengthM) / 100;
}

/**
 * Loss of a length of cable for a budget, which must have a number for whatever a document holds: outside the published
 * span the same formula is carried on, marked as extrapolated and given a tolerance of at least 15 %.
 * @throws RangeError for a negative length or a frequency not above 0
 */
export function coaxLoss(part: CoaxPart, lengthM: number, frequencyMhz: number): CoaxLoss {
  if (!(lengthM >= 0 && Number.isFinite(lengthM)))
    throw new RangeError(`A length must be 0 m or more, not ${lengthM}.`);
  if (!(frequencyMhz > 0 && Number.isFinite(frequencyMhz)))
    throw new RangeError(`A frequency must be above 0 MHz, not ${frequencyMhz}.`);
  const extrapolated = !isInSpan(part, frequencyMhz);
  const lossDb = (twoTermDb(part, frequencyMhz) * lengthM) / 100;
  const percent = part.figures.lossTolerancePercent.value;
  const tolerance = extrapolated ? Math.max(percent, EXTRAPOLATED_PERCENT) : percent;
  return { lossDb, toleranceDb: (lossDb * tolerance) / 100, extrapolated };
}

/** Factor on the loss of a cable that is not at 20 degrees C. Valid from -40 to +85. */
export function temperatureFactor(temperatureC: number): number {
  if (!(temperatureC >= -40 && temperatureC <= 85)) {
    throw new RangeError(`A cable temperature must be -40 to 85 degrees C, not ${temperatureC}.`);
  }
  return 1 + LOSS_PER_KELVIN * (temperatureC - 20);
}

function isInSpan(part: CoaxPart, frequencyMhz: number): boolean {
  return frequencyMhz >= part.figures.minFrequencyMhz.value && frequencyMhz <= part.figures.maxFrequencyMhz.value;
}

function twoTermDb(part: CoaxPart, frequencyMhz: number): number {
  return part.figures.lossK1.value * Math.sqrt(frequencyMhz) + part.figures.lossK2.value * frequencyMhz;
}
