import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatQuantity, shownQuantity } from '../../../core/units/format.ts';
import { parseNumber, storedValue } from '../../../core/units/parse.ts';
import type { UnitPreferences } from '../../../core/units/preferences.ts';
import type { Unit } from '../../../core/units/quantity.ts';

const UNITS: readonly Unit[] = ['m', 'mm', 'km', 'dB', 'dBm', 'W', 'V', 'A', 'MHz', 'degree', 'percent', 'ohm'];
const anyPreferences: fc.Arbitrary<UnitPreferences> = fc.record({
  distance: fc.constantFrom('nm' as const, 'km' as const),
  length: fc.constantFrom('m' as const, 'ft' as const),
  wire: fc.constantFrom('mm2' as const, 'awg' as const),
  decimal: fc.constantFrom('.' as const, ',' as const),
});
const anyValue = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('units go there and back', () => {
  it('what is shown is what was stored, to twelve digits', () => {
    fc.assert(
      fc.property(anyValue, fc.constantFrom(...UNITS), anyPreferences, (value, unit, preferences) => {
        const back = storedValue(shownQuantity({ value, unit }, preferences).value, unit, preferences);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(value)));
      }),
      { seed: 11, numRuns: 1000 },
    );
  });

  it('what is written can be typed in again, in either decimal mark, to the digits shown', () => {
    fc.assert(
      fc.property(anyValue, fc.constantFrom(...UNITS), anyPreferences, (value, unit, preferences) => {
        const shown = shownQuantity({ value, unit, digits: 4 }, preferences);
        const typed = parseNumber(formatQuantity({ value, unit, digits: 4 }, preferences));
        expect(Math.abs((typed ?? Number.NaN) - shown.value)).toBeLessThanOrEqual(0.5001 * 10 ** -shown.digits);
      }),
      { seed: 12, numRuns: 1000 },
    );
  });
});
