import { expect } from 'vitest';

/**
 * Says the worst error a check saw, beside the name of its test, when the environment names SHOW_WORST:
 * `SHOW_WORST=1 npm run test:unit -- tests/published`.
 */
export function noteWorst(text: string): void {
  if (process.env.SHOW_WORST) console.log(`${expect.getState().currentTestName ?? ''}: ${text}`);
}

/** The largest of the differences and the case it belongs to, for the message of a check. */
export function worstOf<T>(
  cases: readonly T[],
  difference: (each: T, index: number) => number,
): { error: number; text: string } {
  let found = { error: -1, text: 'no cases' };
  cases.forEach((each, index) => {
    const error = Math.abs(difference(each, index));
    if (!(error <= found.error))
      found = { error, text: `worst ${error} of ${cases.length} at ${JSON.stringify(each)}` };
  });
  noteWorst(found.text);
  return found;
}

/** Least and greatest of the differences, for the message of a check. */
export function spread(differences: readonly number[]): { low: number; high: number; error: number; text: string } {
  const [low, high] = [Math.min(...differences), Math.max(...differences)];
  const text = `${differences.length} cases, ${low.toPrecision(3)} to ${high.toPrecision(3)}`;
  noteWorst(text);
  return { low, high, error: Math.max(-low, high), text };
}
