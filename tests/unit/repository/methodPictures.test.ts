import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ALL_FIGURES, PICTURES } from '../../plots/all.ts';

const NUMBER = /\d+(?:\.\d+)?/g;

describe('pictures of the method notes', () => {
  it.each(ALL_FIGURES)('$file is what `npm run plots` draws now', ({ file, draw }) => {
    const [kept, now] = [readFileSync(join(PICTURES, file), 'utf8'), draw()];
    expect(now.replace(NUMBER, '#')).toBe(kept.replace(NUMBER, '#'));
    const [old, fresh] = [kept, now].map((svg) => (svg.match(NUMBER) ?? []).map(Number));
    // Two machines may round a coordinate to either side of a tenth.
    fresh?.forEach((number, i) => {
      expect(Math.abs(number - (old?.[i] ?? Number.NaN)), `number ${i}`).toBeLessThan(0.11);
    });
  });

  it('are all there, none is left over, and each is shown in the method notes', () => {
    const files = ALL_FIGURES.map(({ file }) => file).sort();
    expect(readdirSync(PICTURES).sort()).toEqual(files);
    const notes = readFileSync('docs/methods.md', 'utf8');
    for (const file of files) expect(notes, file).toContain(`](pictures/methods/${file})`);
  });
});
