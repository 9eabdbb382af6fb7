/**
 * Bessel functions of both kinds for whole orders: what waves around a round mast are made of. Own code: `core` carries no
 * package for them, the small ones at hand are good to eight places only, and what is needed fits a page.
 */
export interface BesselFunctions {
  /** J of order 0 to `maxOrder`. */
  readonly j: readonly number[];
  /** Y of order 0 to `maxOrder`; minus infinity where it is beyond what a number holds. */
  readonly y: readonly number[];
}

const EULER = 0.577_215_664_901_532_9;
const LARGEST_ARGUMENT = 100;
const LARGEST_ORDER = 200;

/**
 * J and Y of all orders from 0 to `maxOrder` at one argument.
 * @param x 0.000001 to 100
 * @param maxOrder whole, 0 to 200
 * @throws RangeError outside these spans
 * Source: J by downward recurrence (Miller), Y0 and Y1 by their Neumann series, higher Y by upward recurrence (Abramowitz and
 * Stegun, chapter 9, from memory). Checked by: tests/published/mastPattern.test.ts (1e-9 of each value, SciPy)
 */
export function besselFunctions(maxOrder: number, x: number): BesselFunctions {
  if (!(Number.isInteger(maxOrder) && maxOrder >= 0 && maxOrder <= LARGEST_ORDER))
    throw new RangeError(`An order must be a whole number from 0 to ${LARGEST_ORDER}, not ${maxOrder}.`);
  if (!(x >= 1e-6 && x <= LARGEST_ARGUMENT))
    throw new RangeError(`A Bessel argument must be 0.000001 to ${LARGEST_ARGUMENT}, not ${x}.`);
  const first = firstKind(Math.max(maxOrder, 1), x);
  return { j: first.slice(0, maxOrder + 1), y: secondKind(maxOrder, x, first) };
}

/** J up to well beyond both the order asked for and the argument, so that the series of Y can use them too. */
function firstKind(maxOrder: number, x: number): number[] {
  const start = 2 * Math.ceil((Math.max(maxOrder, x) + 20 + 6 * Math.cbrt(Math.max(maxOrder, x))) / 2);
  const values = new Array<number>(start + 1).fill(0);
  let [above, here] = [0, 1e-300];
  let sum = 0;
  for (let n = start; n >= 0; n -= 1) {
    values[n] = here;
    // 1 = J0 + 2 J2 + 2 J4 + ... fixes the size.
    if (n % 2 === 0) sum += n === 0 ? here : 2 * here;
    [above, here] = [here, ((2 * n) / x) * here - above];
    if (Math.abs(here) > 1e250) {
      for (let m = n; m <= start; m += 1) values[m] = (values[m] ?? 0) * 1e-250;
      [above, here, sum] = [above * 1e-250, here * 1e-250, sum * 1e-250];
    }
  }
  return values.map((value) => value / sum);
}

function secondKind(maxOrder: number, x: number, j: readonly number[]): number[] {
  const at = (n: number): number => j[n] ?? 0;
  const log = Math.log(x / 2) + EULER;
  let [y0, y1] = [log * at(0), log * at(1) - at(0) / x];
  for (let k = 1; 2 * k < j.length; k += 1) {
    const sign = k % 2 === 0 ? 1 : -1;
    y0 -= (2 * sign * at(2 * k)) / k;
    y1 += (sign * (at(2 * k - 1) - at(2 * k + 1))) / k;
  }
  const values = [(2 / Math.PI) * y0, (2 / Math.PI) * y1];
  for (let n = 1; n < maxOrder; n += 1) {
    const next = ((2 * n) / x) * (values[n] ?? 0) - (values[n - 1] ?? 0);
    values.push(Number.isFinite(next) ? next : Number.NEGATIVE_INFINITY);
  }
  return values.slice(0, maxOrder + 1);
}
