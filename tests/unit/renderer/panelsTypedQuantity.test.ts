import { describe, expect, it } from 'vitest';
import { METRIC_PREFERENCES, type UnitPreferences } from '../../../core/units/preferences.ts';
import { type QuantityRule, readTyped, shownText, type Typed } from '../../../renderer/ui/typedQuantity.ts';

const METRES: QuantityRule = { unit: 'm', digits: 2, min: 2, max: 120 };
const FEET: UnitPreferences = { length: 'ft', distance: 'nm', wire: 'awg', decimal: ',' };

const stored = (typed: Typed): number | null => {
  if (!typed.isValid) throw new Error(typed.problem);
  return typed.stored;
};
const problem = (typed: Typed): string => (typed.isValid ? `taken: ${typed.stored}` : typed.problem);

describe('what a number field shows', () => {
  it('is in the reader’s unit and decimal mark', () => {
    expect(shownText(12.4, METRES, METRIC_PREFERENCES)).toBe('12.40');
    expect(shownText(3.048, METRES, FEET)).toBe('10,00');
    expect(shownText(-107, { unit: 'dBm', digits: 0 }, METRIC_PREFERENCES)).toBe('−107');
    expect(shownText(null, METRES, METRIC_PREFERENCES)).toBe('');
  });
});

describe('what a number field takes', () => {
  it('reads point and comma alike, whatever the reader’s own mark', () => {
    expect(stored(readTyped('12.5', METRES, METRIC_PREFERENCES))).toBe(12.5);
    expect(stored(readTyped('12,5', METRES, METRIC_PREFERENCES))).toBe(12.5);
    expect(stored(readTyped(' 1 250 ', { unit: 'W' }, METRIC_PREFERENCES))).toBe(1250);
    expect(stored(readTyped('−0,5', { unit: 'm' }, METRIC_PREFERENCES))).toBe(-0.5);
  });

  it('takes a bare number as the reader’s unit', () => {
    expect(stored(readTyped('10', METRES, FEET))).toBeCloseTo(3.048, 9);
    expect(stored(readTyped('1', { unit: 'mm' }, FEET))).toBeCloseTo(25.4, 9);
    expect(stored(readTyped('20', { unit: 'km' }, METRIC_PREFERENCES))).toBeCloseTo(37.04, 9);
  });

  it('lets a unit that is typed win over the reader’s own', () => {
    expect(stored(readTyped('40 ft', METRES, METRIC_PREFERENCES))).toBeCloseTo(12.192, 9);
    expect(stored(readTyped('3,5m', METRES, FEET))).toBeCloseTo(3.5, 9);
    expect(stored(readTyped('12\' 6"', METRES, METRIC_PREFERENCES))).toBeCloseTo(12.5 * 0.3048, 9);
    expect(stored(readTyped('12 ft 6 in', METRES, FEET))).toBeCloseTo(12.5 * 0.3048, 9);
    expect(stored(readTyped('1.6 GHz', { unit: 'MHz' }, METRIC_PREFERENCES))).toBe(1600);
    expect(stored(readTyped('10 AWG', { unit: 'mm2' }, METRIC_PREFERENCES))).toBeCloseTo(5.26, 2);
    expect(stored(readTyped('3 %', { unit: 'percent' }, METRIC_PREFERENCES))).toBe(3);
  });

  it('refuses a unit that does not belong there instead of taking the bare number', () => {
    expect(problem(readTyped('5 V', METRES, METRIC_PREFERENCES))).toBe('Type the number alone, or with m.');
    expect(problem(readTyped('2 m', { unit: 'ratio' }, METRIC_PREFERENCES))).toBe('Type the number alone.');
  });

  it('says the allowed range in the reader’s unit', () => {
    expect(problem(readTyped('121', METRES, METRIC_PREFERENCES))).toBe('Type a number from 2.00 to 120.00 m.');
    expect(problem(readTyped('1', METRES, FEET))).toBe('Type a number from 6,56 to 393,70 ft.');
    expect(problem(readTyped('-1', { unit: 'W', min: 0 }, METRIC_PREFERENCES))).toBe(
      'Type a number of at least 0.0 W.',
    );
    expect(problem(readTyped('12.4.1', METRES, METRIC_PREFERENCES))).toMatch(/from 2\.00/);
    expect(problem(readTyped('twelve', { unit: 'ratio' }, METRIC_PREFERENCES))).toBe('Type a number.');
    expect(problem(readTyped('', METRES, METRIC_PREFERENCES))).toMatch(/from 2\.00/);
  });

  it('takes a limit as it is shown, and never stores beyond it', () => {
    // 10 m is 32.808 ft and 2 m is 6.562 ft: both are shown a little outside.
    expect(stored(readTyped('32,81', { ...METRES, max: 10 }, FEET))).toBe(10);
    expect(stored(readTyped('6,56', METRES, FEET))).toBe(2);
  });

  it('reads an empty optional field as nothing', () => {
    expect(stored(readTyped('  ', { unit: 'm', isOptional: true }, METRIC_PREFERENCES))).toBeNull();
  });
});
