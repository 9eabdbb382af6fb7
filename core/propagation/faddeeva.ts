import { add, type Complex, complex, divide, multiply, polynomial, scale } from './complex.ts';

/** Terms of the rational series; 32 give about twelve digits in the upper half plane. */
const TERMS = 32;
const SPREAD = Math.sqrt(TERMS / Math.SQRT2);
const COEFFICIENTS: readonly number[] = Array.from({ length: TERMS }, (_, n) => coefficient(n + 1));

/**
 * Faddeeva function w(z) = exp(−z²) erfc(−jz), for an imaginary part of 0 or more.
 * @throws RangeError below the real axis, where the series does not hold, and for what is not finite
 * Source: J. A. C. Weideman, Computation of the complex error function, SIAM J. Numer. Anal. 31 (1994), from memory.
 * Checked by: tests/published/groundWave.test.ts
 */
export function faddeeva(z: Complex): Complex {
  if (!(z.im >= 0 && Number.isFinite(z.re) && Number.isFinite(z.im)))
    throw new RangeError(`The Faddeeva function is reckoned on and above the real axis, not at ${z.re}, ${z.im}.`);
  const jz = complex(-z.im, z.re);
  const below = complex(SPREAD - jz.re, -jz.im);
  const ratio = divide(add(complex(SPREAD), jz), below);
  const series = scale(divide(polynomial(COEFFICIENTS, ratio), multiply(below, below)), 2);
  return add(series, divide(complex(1 / Math.sqrt(Math.PI)), below));
}

/** Fourier coefficient of exp(−t²)(L² + t²) over t = L tan(θ/2). */
function coefficient(n: number): number {
  const points = 2 * TERMS;
  let sum = 0;
  for (let k = 1 - points; k < points; k += 1) {
    const angle = (k * Math.PI) / points;
    const t = SPREAD * Math.tan(angle / 2);
    sum += Math.exp(-t * t) * (SPREAD * SPREAD + t * t) * Math.cos(n * angle);
  }
  return sum / (2 * points);
}
