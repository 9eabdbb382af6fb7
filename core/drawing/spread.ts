/**
 * Positions on a line as near as can be to those wished for (least squares), in the order given, each at least its gap
 * after the one before. Moves no one more than needed, and changes smoothly when a wish does: pool adjacent violators
 * (Ayer et al. 1955, from memory).
 * @param gaps least distance from each to the next; the last is not used
 * @param low high ends of the line; when there is not room enough the far end gives way
 */
export function spread(
  wishes: readonly number[],
  gaps: readonly number[],
  low: number,
  high: number,
): readonly number[] {
  const offsets: number[] = [];
  let offset = 0;
  for (let index = 0; index < wishes.length; index++) {
    offsets.push(offset);
    offset += gaps[index] ?? 0;
  }
  const length = offsets.at(-1) ?? 0;
  const fit = rising(wishes.map((wish, index) => wish - (offsets[index] ?? 0)));
  return fit.map((value, index) => Math.max(low, Math.min(high - length, value)) + (offsets[index] ?? 0));
}

/** The rising sequence nearest to the values. */
function rising(values: readonly number[]): readonly number[] {
  const pools: { sum: number; count: number }[] = [];
  for (const value of values) {
    let pool = { sum: value, count: 1 };
    for (let last = pools.at(-1); last && last.sum / last.count >= pool.sum / pool.count; last = pools.at(-1)) {
      pools.pop();
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
    }
    pools.push(pool);
  }
  return pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
}
