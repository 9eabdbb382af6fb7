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

/** What is left of a power after a loss, W. */
export function afterLossW(watts: number, lossDb: number): number {
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

/** Tolerances of independent figures together: root of the sum of squares. */
export function combineTolerances(tolerances: readonly number[]): number {
  return Math.hypot(...tolerances);
}

/** A power tolerance in watts as plus-or-minus dB: its upward half, the smaller of the two, is what fits a symmetric band. */
export function powerToleranceDb(watts: number, toleranceW: number): number {
  return 10 * Math.log10(1 + toleranceW / watts);
}

function requireFinite(value: number, what: string): void {
  if (!Number.isFinite(value)) throw new RangeError(`${what} must be a finite number, not ${value}.`);
}
