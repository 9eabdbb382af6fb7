/**
 * Numbers of sets by order, index 0 for the empty set: exact up to 2^53.
 */
export type ByOrder = readonly number[];

/** Sets of either of two families that share none. */
export function sumOf(a: readonly number[], b: readonly number[]): readonly number[] {
  if (b.length === 0) return a;
  if (a.length === 0) return b;
  const longer = a.length >= b.length ? a : b;
  const other = longer === a ? b : a;
  return longer.map((count, order) => count + (other[order] ?? 0));
}

/** Unions of a set of each of two families over different events, up to an order. */
export function productOf(a: readonly number[], b: readonly number[], maxOrder: number): readonly number[] {
  if (a.length === 0 || b.length === 0) return [];
  const product = new Array<number>(Math.min(maxOrder, a.length + b.length - 2) + 1).fill(0);
  a.forEach((countA, i) => {
    b.forEach((countB, j) => {
      if (i + j < product.length) product[i + j] = (product[i + j] as number) + countA * countB;
    });
  });
  return product;
}
