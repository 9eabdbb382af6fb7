import { formatNumber, shownQuantity } from '../../../core/units/format.ts';
import type { UnitPreferences } from '../../../core/units/preferences.ts';
import type { Quantity, Unit } from '../../../core/units/quantity.ts';
import { q } from '../../../core/units/quantity.ts';

/** A power as people say it: `25 W`, `7.4 W`, `0.58 W`, `129 W`. */
export function watts(value: number): Quantity {
  return q(value, 'W', wattDigits(value));
}

export function wattDigits(value: number): number {
  if (Number.isInteger(value) || value >= 100) return 0;
  if (value >= 1) return 1;
  return value >= 0.1 ? 2 : 3;
}

/** A carrier as people say it: `156.8 MHz`, `1575.42 MHz`. */
export function megahertz(value: number): Quantity {
  const digits = [0, 1, 2].find((each) => Math.abs(value - Number(value.toFixed(each))) < 1e-9) ?? 3;
  return q(value, 'MHz', digits);
}

/** A whole per cent, but never 0 or 100 for what is neither. */
export function percent(value: number): Quantity {
  const isNearAnEnd = value > 0 && value < 100 && (value < 0.5 || value > 99.5);
  return q(value, 'percent', isNearAnEnd ? 1 : 0);
}

/** The number alone, in the reader's unit, for a column whose head names the unit. */
export function bareNumber(value: number, unit: Unit, preferences: UnitPreferences, digits: number): string {
  const shown = shownQuantity({ value, unit, digits }, preferences);
  return formatNumber(shown.value, shown.digits, preferences);
}

/** The reader's symbol of a unit. */
export function symbolOf(unit: Unit, preferences: UnitPreferences): string {
  return shownQuantity({ value: 0, unit }, preferences).symbol;
}
