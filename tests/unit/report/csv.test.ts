import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../../core/report/csv.ts';
import { cableScheduleCsv, pathLossCsv } from '../../../core/report/schedules.ts';
import { METRIC_PREFERENCES, type UnitPreferences } from '../../../core/units/preferences.ts';
import { ASSESSMENT, BOAT } from './boat.ts';

const COMMA: UnitPreferences = { ...METRIC_PREFERENCES, decimal: ',' };

function read(text: string, delimiter: string): string[][] {
  return parse(text, { bom: true, delimiter, record_delimiter: '\r\n' });
}

describe('CSV text', () => {
  it('reads back whatever is written, in both dialects', () => {
    const cell = fc.string({ unit: 'grapheme', maxLength: 30 });
    const table = fc.array(fc.tuple(cell, cell, cell), { maxLength: 6 });
    fc.assert(
      fc.property(table, fc.constantFrom('.' as const, ',' as const), (rows, decimal) => {
        const text = csvText(['a', 'b', 'c'], rows, { ...METRIC_PREFERENCES, decimal });
        const back = read(text, decimal === ',' ? ';' : ',').slice(1);
        const plain = back.map((row) => row.map((each) => each.replace(/^'(?=[=+\-@\t\r\n])/u, '')));
        const wrote = rows.map((row) => row.map((each) => each.replace(/^'(?=[=+\-@\t\r\n])/u, '')));
        expect(plain).toEqual(wrote);
      }),
      { seed: 20310412 },
    );
  });

  it('takes the sting out of formulas and leaves numbers numbers', () => {
    const text = csvText(
      ['x'],
      [['=1+1'], ['+A1'], ['-A1'], ['@SUM(A1)'], ['\tx'], [{ value: -0.3, digits: 2 }], ['W01 - A1']],
      METRIC_PREFERENCES,
    );
    expect(read(text, ',').flat()).toEqual(['x', "'=1+1", "'+A1", "'-A1", "'@SUM(A1)", "'\tx", '-0.30', 'W01 - A1']);
  });

  it('never writes minus nought, and refuses a number that is none', () => {
    expect(csvText([], [[{ value: -0.001, digits: 1 }]], METRIC_PREFERENCES)).toContain('\r\n0.0\r\n');
    expect(() => csvText([], [[{ value: Number.NaN, digits: 1 }]], METRIC_PREFERENCES)).toThrow(RangeError);
  });

  it('starts with a byte order mark and ends every line with CRLF (RFC 4180)', () => {
    const text = csvText(['a', 'b'], [['1', '2']], METRIC_PREFERENCES);
    expect(text).toBe('\uFEFFa,b\r\n1,2\r\n');
  });
});

describe('schedules as CSV', () => {
  it('has every run and feed once, with units in the head', () => {
    const [head = [], ...rows] = read(cableScheduleCsv(BOAT, ASSESSMENT, METRIC_PREFERENCES), ',');
    expect(rows.map((row) => row[0])).toEqual(['W01', 'W02', 'F01']);
    expect(head).toContain('Cut (m)');
    expect(rows[0]?.[head.indexOf('Slack (m)')]).toBe('0.50');
    expect(rows.every((row) => row.length === head.length)).toBe(true);
  });

  it('switches to feet and inches', () => {
    const [head = [], first] = read(cableScheduleCsv(BOAT, ASSESSMENT, { ...METRIC_PREFERENCES, length: 'ft' }), ',');
    expect(first?.[head.indexOf('Outside diameter (in)')]).toBe('0.20');
    expect(Number(first?.[head.indexOf('Slack (ft)')])).toBeCloseTo(0.5 / 0.3048, 2);
  });

  it('switches to decimal comma and semicolon', () => {
    const [head = [], ...rows] = read(pathLossCsv(BOAT, ASSESSMENT, COMMA), ';');
    expect(rows).toHaveLength(3);
    expect(rows[1]?.[head.indexOf('Loss (dB)')]).toBe('3,400');
    expect(rows[1]?.[head.indexOf('Known by')]).toBe('data sheet');
    expect(rows[2]?.[head.indexOf('Running loss (dB)')]).toBe('3,426');
  });
});
