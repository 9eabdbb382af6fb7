/**
 * Sums of reflection on a line. VSWR is a ratio >= 1; losses are positive dB; reflection is the magnitude of the voltage
 * reflection coefficient, 0 to below 1.
 * Source: line theory as in any radio handbook; worked examples checked in tests/published/mismatch.test.ts.
 */

/** Reflection of a VSWR: (S - 1) / (S + 1). @throws RangeError below 1 */
export function reflectionOfVswr(vswr: number): number {
  if (!(vswr >= 1 && Number.isFinite(vswr))) throw new RangeError(`A VSWR must be 1 or more, not ${vswr}.`);
  return (vswr - 1) / (vswr + 1);
}

/** VSWR of a reflection: (1 + G) / (1 - G). @throws RangeError outside 0 <= G < 1 */
export function vswrOfReflection(reflection: number): number {
  if (!(reflection >= 0 && reflection < 1)) {
    throw new RangeError(`A reflection must be 0 to below 1, not ${reflection}.`);
  }
  return (1 + reflection) / (1 - reflection);
}

/** Return loss of a VSWR, dB. @throws RangeError at or below 1, where nothing returns */
export function returnLossDb(vswr: number): number {
  const reflection = reflectionOfVswr(vswr);
  if (reflection === 0) throw new RangeError('A VSWR of exactly 1 returns nothing: its return loss has no number.');
  return -20 * Math.log10(reflection);
}

/** Share of power that a mismatch at the load throws back, as a loss, dB. */
export function mismatchLossDb(vswr: number): number {
  return positive(-10 * Math.log10(1 - reflectionOfVswr(vswr) ** 2));
}

/**
 * Loss of a line with a mismatched load, dB, of the net power that goes into it: 10 log((A^2 - G^2) / (A (1 - G^2))).
 * Exact only where the reflection's phase averages out; short and HF lines need the full line equation.
 * @throws RangeError for a negative loss or a VSWR below 1
 */
export function totalLineLossDb(matchedLossDb: number, loadVswr: number): number {
  const squared = reflectionOfVswr(loadVswr) ** 2;
  const backShare = squared * 10 ** (-requireLoss(matchedLossDb) / 5);
  return positive(matchedLossDb + 10 * Math.log10((1 - backShare) / (1 - squared)));
}

/** VSWR read at the radio's end of a line: the loss hides the load, G falls by the loss out and back. */
export function vswrAtInput(matchedLossDb: number, loadVswr: number): number {
  return vswrOfReflection(reflectionOfVswr(loadVswr) * 10 ** (-requireLoss(matchedLossDb) / 10));
}

/**
 * VSWR read at the radio's end with the antenna taken off: everything comes back, less the loss out and back.
 * @throws RangeError when the loss is below a billionth of a dB (a lossless line reads without limit)
 */
export function openEndVswr(lossDb: number): number {
  if (!(requireLoss(lossDb) > 0))
    throw new RangeError('The loss must be above 0 dB: a lossless open line has no VSWR.');
  return vswrOfReflection(10 ** (-lossDb / 10));
}

/**
 * Loss of a line from the VSWR read at its input with the far end open: 10 log((S + 1) / (S - 1)).
 * @throws RangeError when the VSWR is not above 1
 */
export function lossOfOpenEndVswrDb(vswr: number): number {
  const reflection = reflectionOfVswr(vswr);
  if (reflection === 0) throw new RangeError('An open line that reads exactly 1 has no loss that can be stated.');
  return -10 * Math.log10(reflection);
}

function requireLoss(lossDb: number): number {
  if (!(lossDb >= 0 && Number.isFinite(lossDb))) throw new RangeError(`A loss must be 0 dB or more, not ${lossDb}.`);
  return lossDb;
}

/** Rounding can leave a hair below zero, which would print as minus nought. */
const positive = (db: number): number => Math.max(0, db);
