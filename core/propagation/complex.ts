/**
 * The little complex arithmetic the ground wave needs. Own code: no small, well-kept library for complex numbers with the
 * Faddeeva function is at hand, and what is needed fits a page.
 */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });
export const ONE: Complex = complex(1);

export const add = (a: Complex, b: Complex): Complex => complex(a.re + b.re, a.im + b.im);
export const subtract = (a: Complex, b: Complex): Complex => complex(a.re - b.re, a.im - b.im);
export const multiply = (a: Complex, b: Complex): Complex =>
  complex(a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re);
export const scale = (a: Complex, factor: number): Complex => complex(a.re * factor, a.im * factor);
export const modulus = (a: Complex): number => Math.hypot(a.re, a.im);

/** Quotient; the divisor must not be 0. */
export function divide(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im;
  return complex((a.re * b.re + a.im * b.im) / square, (a.im * b.re - a.re * b.im) / square);
}

/** A number of given size and angle, radians. */
export const polar = (size: number, angle: number): Complex => complex(size * Math.cos(angle), size * Math.sin(angle));

export const exponential = (a: Complex): Complex => polar(Math.exp(a.re), a.im);

/** Principal square root: the one with a real part of 0 or more. */
export const squareRoot = (a: Complex): Complex => polar(Math.sqrt(modulus(a)), Math.atan2(a.im, a.re) / 2);

/** Sum of coefficients[n] zⁿ, by Horner's rule. */
export function polynomial(coefficients: readonly number[], z: Complex): Complex {
  return coefficients.reduceRight((sum, coefficient) => add(multiply(sum, z), complex(coefficient)), complex(0));
}
