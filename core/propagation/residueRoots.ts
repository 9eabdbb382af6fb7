import { add, type Complex, divide, modulus, multiply, ONE, polar, scale, subtract } from './complex.ts';

/** Zeros of the Airy function and of its derivative, sizes, from tables; the later ones follow from their expansions. */
const AIRY_ZEROS = [2.338107410459767, 4.087949444130971, 5.520559828095551, 6.786708090071759];
const AIRY_SLOPE_ZEROS = [1.018792971647471, 3.248197582179836, 4.820099211178736, 6.163307355639486];
/** All roots start on this ray. */
const RAY = polar(1, Math.PI / 3);
/** Runge-Kutta steps from a known root to the wanted one; doubling them moves a root by less than 1e-6. */
const STEPS = 24;

/**
 * The n-th root t (n from 1) of w'(t) = q w(t), w the outgoing Airy function, time factor exp(−iωt). The root at q = 0 or
 * at 1/q = 0, whichever is nearer, is carried to q along a straight line by dt/dq = 1/(t − q²), so that no Airy
 * function of a complex number is needed.
 * @param q ground parameter of the residue series, with an angle of 45 to 135 degrees, as every real ground has
 * Source: V. A. Fock's form of the residue series; expansions of the zeros as in handbooks of functions, from memory.
 * Checked by: tests/published/groundWave.test.ts
 */
export function residueRoot(n: number, q: Complex): Complex {
  const soft = scale(RAY, AIRY_SLOPE_ZEROS[n - 1] ?? airySlopeZero((3 * Math.PI * (4 * n - 3)) / 8));
  if (modulus(q) ** 2 <= modulus(soft))
    return carried(soft, (t, share) => divide(q, subtract(t, scale(multiply(q, q), share * share))));
  const hard = scale(RAY, AIRY_ZEROS[n - 1] ?? airyZero((3 * Math.PI * (4 * n - 1)) / 8));
  const inverse = divide(ONE, q);
  const square = multiply(inverse, inverse);
  return carried(hard, (t, share) => divide(inverse, subtract(ONE, scale(multiply(t, square), share * share))));
}

/** Classical Runge-Kutta from share 0 to share 1 of the way. */
function carried(start: Complex, slope: (t: Complex, share: number) => Complex): Complex {
  const step = 1 / STEPS;
  let t = start;
  for (let i = 0; i < STEPS; i += 1) {
    const share = i * step;
    const first = slope(t, share);
    const second = slope(add(t, scale(first, step / 2)), share + step / 2);
    const third = slope(add(t, scale(second, step / 2)), share + step / 2);
    const fourth = slope(add(t, scale(third, step)), share + step);
    const inner = scale(add(second, third), 2);
    t = add(t, scale(add(add(first, fourth), inner), step / 6));
  }
  return t;
}

const airyZero = (z: number): number =>
  Math.cbrt(z * z) * (1 + 5 / (48 * z ** 2) - 5 / (36 * z ** 4) + 77125 / (82944 * z ** 6));
const airySlopeZero = (z: number): number =>
  Math.cbrt(z * z) * (1 - 7 / (48 * z ** 2) + 35 / (288 * z ** 4) - 181223 / (207360 * z ** 6));
