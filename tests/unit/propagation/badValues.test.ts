import { describe, expect, it } from 'vitest';
import { PROPAGATION_SUMS } from '../../support/sums/propagation.ts';
import { RF_SUMS } from '../../support/sums/rf.ts';
import { SITING_SUMS } from '../../support/sums/siting.ts';
import type { Sum } from '../../support/sums/sum.ts';

// One walk over every sum that propagation, rf and siting export: each of its inputs in turn becomes something that is no
// length, frequency or level. A sum without a row in tests/support/sums fails, so that a forgotten check shows.

const SUMS: readonly Sum[] = [...PROPAGATION_SUMS, ...RF_SUMS, ...SITING_SUMS];

/** Functions that are no sums of their own, and why. */
const EXEMPT: Readonly<Record<string, string>> = {
  'complex.ts': 'arithmetic: a number that is none stays one, and whoever starts the sum has checked',
  'residueRoots.ts': 'inside the ground wave, which checks what comes in; in the innermost loop',
  'skyView.ts': 'takes a document, as the other files of the view of the sky do',
  'skyBodies.ts': 'see skyView.ts',
  'skyGeometry.ts': 'see skyView.ts',
  'skyItems.ts': 'see skyView.ts',
  'skyLoss.ts': 'see skyView.ts',
  'skyShares.ts': 'see skyView.ts',
  'stack.ts': 'takes a part, whose figures its schema holds to their spans',
  addPowersDb: 'inside the cascade, where no noise at all is minus infinity',
  excessNoiseDb: 'inside the cascade, where no noise at all is minus infinity',
  couplingValidity: 'a judgement, not a sum: what is endlessly far is beyond what was checked',
  leastClearance: 'inside the smooth sea and the two rays, which check what comes in; in the innermost loop',
};

/** Inputs that cannot be below nought, and those that cannot be nought either, by their name. */
const NOT_NEGATIVE =
  /^(h[12]M|heightKm|alongKm|sideM|lengthM|watts|foF2Mhz|lossDb|\w*LossDb|\w*NoiseFigureDb|noiseFigureDb|antennaTemperatureK|groundLossOhm)$/;
const POSITIVE =
  /^(frequencyMhz|distanceKm|hopKm|[a-z]\w*W|bandwidthHz|wavelengthM|radiusMm|vswr|m3000|elements|effectiveRadiusKm|diameterM)$/;
/** What is called a loss and may yet be below nought: the loss of a path between antennas that help each other. */
const ANY_SIGN: readonly string[] = ['pathLossDb'];

function isRefused(sum: Sum, input: string, value: number): boolean {
  try {
    sum.run({ ...sum.good, [input]: value });
    return false;
  } catch (error) {
    if (error instanceof RangeError) return true;
    throw error;
  }
}

/** Whether a number that is none hides anywhere in an answer. */
function holdsNaN(answer: unknown): boolean {
  if (typeof answer === 'number') return Number.isNaN(answer);
  return typeof answer === 'object' && answer !== null && Object.values(answer).some(holdsNaN);
}

const each = SUMS.flatMap((sum) => Object.keys(sum.good).map((input) => ({ name: sum.name, input, sum })));

describe('every exported sum', () => {
  it('has a row here or a reason why not', async () => {
    const modules = import.meta.glob('../../../core/{propagation,rf,siting}/*.ts');
    const rows = new Set(SUMS.map(({ name }) => name));
    const missing: string[] = [];
    for (const [path, load] of Object.entries(modules)) {
      const file = path.split('/').at(-1) ?? '';
      for (const [name, value] of Object.entries((await load()) as Record<string, unknown>))
        if (typeof value === 'function' && !rows.has(name) && !EXEMPT[name] && !EXEMPT[file])
          missing.push(`${file}: ${name}`);
    }
    expect(Object.keys(modules).length).toBeGreaterThan(20);
    expect(missing.join(', ')).toBe('');
  });

  it.each(SUMS)('$name answers its good inputs with numbers', ({ run, good }) => {
    expect(holdsNaN(run(good))).toBe(false);
  });

  it.each(each)('$name refuses a $input that is no number or endless', ({ sum, input }) => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
      expect(isRefused(sum, input, value), `${value}`).toBe(true);
  });

  it.each(each.filter(({ input }) => (NOT_NEGATIVE.test(input) || POSITIVE.test(input)) && !ANY_SIGN.includes(input)))(
    '$name refuses a $input below nought, and of nought where there is none',
    ({ sum, input }) => {
      expect(isRefused(sum, input, -1), '-1').toBe(true);
      expect(isRefused(sum, input, -1e-9), '-1e-9').toBe(true);
      if (POSITIVE.test(input)) expect(isRefused(sum, input, 0), '0').toBe(true);
    },
  );

  it.each(each)('$name never answers a $input far outside with a number that is none', ({ sum, input }) => {
    for (const value of [-1e9, -1e3, -1, 0, 1e-9, 1e3, 1e9])
      if (!isRefused(sum, input, value))
        expect(holdsNaN(sum.run({ ...sum.good, [input]: value })), `${value}`).toBe(false);
  });
});
