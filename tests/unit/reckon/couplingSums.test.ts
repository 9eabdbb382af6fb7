import { describe, expect, it } from 'vitest';
import { reckon } from '../../../core/reckon/sums.ts';

const isolationDb = (typed: Record<string, string>): number => {
  const reckoned = reckon('isolation', typed);
  if (!reckoned.ok) throw new Error(reckoned.message);
  return reckoned.answers.find(({ key }) => key === 'isolationDb')?.value ?? Number.NaN;
};

describe('isolation', () => {
  // Method-of-moments values for two half-wave dipoles at 156.8 MHz, computed for this project's reference tables.
  it.each([
    [{ side: '2' }, 18.56],
    [{ side: '10' }, 32.1],
    [{ side: '0', up: '2' }, 31.52],
    [{ side: '2', up: '3' }, 35.06],
  ])('%j is about %f dB', (typed, published) => {
    expect(isolationDb(typed)).toBeGreaterThan(published - 0.5);
    expect(isolationDb(typed)).toBeLessThan(published + 0.25);
  });

  it('stacked beats side by side at the same distance', () => {
    expect(isolationDb({ side: '0', up: '2' })).toBeGreaterThan(isolationDb({ side: '2' }));
  });

  it('refuses one antenna standing in the other', () => {
    expect(reckon('isolation', { side: '0', up: '0' }).ok).toBe(false);
  });
});
