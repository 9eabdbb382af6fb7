import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textReport } from '../../../core/report/text.ts';
import { textTable, wrapText } from '../../../core/report/textTable.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import { ASSESSMENT, BOAT } from './boat.ts';

describe('the report on the terminal', () => {
  const report = textReport(BOAT, ASSESSMENT, METRIC_PREFERENCES);

  it('fits 100 columns', () => {
    for (const line of report.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
  });

  it('says losses, ranges, failures and findings', () => {
    expect(report).toContain('25.0 W at the set, 11.4 W at the antenna: 3.43 ± 0.34 dB, 55 % lost');
    expect(report).toMatch(/Main mast lost {3}– {3}F {3}– {3}– {3}– {3}R {3}R {3}F/);
    expect(report).toMatch(/Ship’s bridge +15\.1/);
    expect(report).toContain('overruled: The mast is to be unstepped next year. (Owner)');
    expect(report).toMatch(/local codes/i);
    expect(report).not.toMatch(/seaworth|complian|NaN|undefined/i);
  });
});

describe('tables in plain text', () => {
  it('never grow wider than they may, and lose no letter', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', 'b', ' ', 'é', '–'), maxLength: 60 });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 5 }), (rows) => {
        const lines = textTable(['One', { head: 'Two', end: true }, 'Three'], rows, 40);
        expect(Math.max(...lines.map((line) => [...line].length))).toBeLessThanOrEqual(40);
        const letters = (text: string): number => text.replaceAll(/[^abé–]/gu, '').length;
        expect(letters(lines.slice(2).join(''))).toBe(letters(rows.flat().join('')));
      }),
      { seed: 20310412 },
    );
  });

  it('wraps at spaces and breaks only what is too long', () => {
    expect(wrapText('one two three', 7)).toEqual(['one two', 'three']);
    expect(wrapText('abcdefghij', 4)).toEqual(['abcd', 'efgh', 'ij']);
    expect(wrapText('', 4)).toEqual(['']);
  });
});
