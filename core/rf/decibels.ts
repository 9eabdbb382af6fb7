/**
 * Level of a power, dBm.
 * @throws RangeError when the power is not above 0
 */
export function wattsToDbm(watts: number): number {
  if (!(watts > 0 && Number.isFinite(watts))) throw new RangeError(`A power must be above 0 W, not ${watts}.`);
  return 10 * Math.log10(watts) + 30;
}

/** Power of a level, W. */
export function dbmToWatts(levelDbm: number): number {
  requireFinite(levelDbm, 'A level');
  return 10 ** ((levelDbm - 30) / 10);
}

/** What is left of a power after a loss (below 0: a gain), W. @throws RangeError for a negative power or no number */
export function afterLossW(watts: number, lossDb: number): number {
  if (!(watts >= 0 && Number.isFinite(watts))) throw new RangeError(`A power must be 0 W or more, not ${watts}.`);
  requireFinite(lossDb, 'A loss');
  return watts * 10 ** (-lossDb / 10);
}

/** Share of the power a loss takes, per cent: 2.218 dB takes 40, 3.010 dB takes 50. */
export function lostPercent(lossDb: number): number {
  requireFinite(lossDb, 'A loss');
  return 100 * (1 - 10 ** (-lossDb / 10));
}

/**
 * Loss that takes a share of the power, dB; the inverse of `lostPercent`.
 * @throws RangeError outside 0 <= percent < 100
 */
export function lossOfPercentDb(percent: number): number {
  if (!(percent >= 0 && percent < 100))
    throw new RangeError(`A share must be 0 to below 100 per cent, not ${percent}.`);
  // Minus zero would print as -0.
  return percent === 0 ? 0 : -10 * Math.log10(1 - percent / 100);
}

/** Tolerances of independent figures together: root of the sum of squares. @throws RangeError when one is not finite */
export function combineTolerances(tolerances: readonly number[]): number {
  const together = Math.hypot(...tolerances);
  requireFinite(together, 'Tolerances together');
  return together;
}

/**
 * A power tolerance in watts as plus-or-minus dB: its upward half, the smaller of the two, is what fits a symmetric band.
 * @throws RangeError when the power is not above 0 or the tolerance negative
 */
export function powerToleranceDb(watts: number, toleranceW: number): number {
  if (!(watts > 0 && Number.isFinite(watts))) throw new RangeError(`A power must be above 0 W, not ${watts}.`);
  if (!(toleranceW >= 0 && Number.isFinite(toleranceW)))
    throw new RangeError(`A tolerance must be 0 W or more, not ${toleranceW}.`);
  return 10 * Math.log10(1 + toleranceW / watts);
}

/** Two powers together, dB. Reckoned from the greater one, so that no level is too great for it; minus infinity is none. */
export function addPowersDb(oneDb: number, otherDb: number): number {
  const [greater, less] = [Math.max(oneDb, otherDb), Math.min(oneDb, otherDb)];
  // Nothing beside nothing: their difference would be no number.
  return less === Number.NEGATIVE_INFINITY ? greater : greater + 10 * Math.log10(1 + 10 ** ((less - greater) / 10));
}

/** What a noise figure of 0 or more adds to the noise of a source at 290 K, dB: 10 log(F − 1); minus infinity at 0. */
export function excessNoiseDb(noiseFigureDb: number): number {
  // From 200 dB up the 1 is beyond the last digit, and F itself would soon be too great a number.
  return noiseFigureDb > 200 ? noiseFigureDb : 10 * Math.log10(Math.expm1((noiseFigureDb * Math.LN10) / 10));
}

function requireFinite(value: number, what: string): void {
  if (!Number.isFinite(value)) throw new RangeError(`${what} must be a finite number, not ${value}.`);
}
