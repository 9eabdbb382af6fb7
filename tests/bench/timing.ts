/** Milliseconds a piece of work takes. */
export const milliseconds = (work: () => unknown): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

/** Added to by every sum timed, so that none can be left out as unused. */
let sink = 0;
export const keep = (value: number): void => {
  sink += value;
};

/** How many rounds a rate is taken from. */
const ROUNDS = 9;

/**
 * How often a sum can be done in a second: the median round, and the best one, which other work of the machine disturbs
 * least. One round before them warms up and is not counted.
 * @param sums how many to a round; the sum is given the number of the call, so that no two in a row are alike
 */
export function ratePerSecond(sum: (call: number) => number, sums: number): { median: number; best: number } {
  const round = (): number =>
    milliseconds(() => {
      let total = 0;
      for (let call = 0; call < sums; call += 1) total += sum(call);
      keep(total);
    });
  round();
  const times = Array.from({ length: ROUNDS }, round);
  return { median: (1000 * sums) / median(times), best: (1000 * sums) / Math.min(...times) };
}

/** All that was summed; printed, because what is never used may be left out. */
export const kept = (): number => sink;

/** `4 480 000`. */
export const grouped = (value: number): string =>
  String(Math.round(Number(value.toPrecision(3)))).replace(/\B(?=(\d{3})+$)/g, ' ');
