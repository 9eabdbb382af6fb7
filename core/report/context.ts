import type { Assessment } from '../assess.ts';
import type { Project } from '../model/project.ts';
import type { DistanceBand } from '../reach/types.ts';
import { formatNumber, formatQuantity, shownQuantity } from '../units/format.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import type { Unit } from '../units/quantity.ts';

/** What every section is written from. */
export interface SheetContext {
  readonly project: Project;
  readonly assessment: Assessment;
  readonly preferences: UnitPreferences;
  readonly paper: 'A4' | 'Letter';
  readonly date: string;
}

/** A quantity in the reader's units, unit included. */
export function show(context: SheetContext, value: number, unit: Unit, digits?: number): string {
  return formatQuantity(digits === undefined ? { value, unit } : { value, unit, digits }, context.preferences);
}

/** Power in watts, finer below one watt, where a tenth is too coarse to tell what came from what arrived. */
export function watts(context: SheetContext, value: number): string {
  return show(context, value, 'W', value < 1 ? 2 : 1);
}

/** A rating or a conductor's area as the trade writes it: `10 A`, `7.5 A`, `35 mm²`, `0.75 mm²`. */
export function rated(preferences: UnitPreferences, value: number, unit: 'A' | 'mm2'): string {
  const digits = [0, 1].find((each) => Math.abs(value - Number(value.toFixed(each))) < 1e-9) ?? 2;
  return formatQuantity({ value, unit, digits }, preferences);
}

/** The bare number in the reader's unit, for a column whose head names the unit. */
export function bare(context: SheetContext, value: number | null, unit: Unit, digits: number): string {
  if (value === null) return '';
  const shown = shownQuantity({ value, unit, digits }, context.preferences);
  return formatNumber(shown.value, shown.digits, context.preferences);
}

/** `18 to 24 NM`: a band in words, nominal left to its own column. */
export function bandText(context: SheetContext, band: DistanceBand, digits = 1): string {
  return `${bare(context, band.lowKm, 'km', digits)} to ${bare(context, band.highKm, 'km', digits)}`;
}

export function lengthUnit(context: SheetContext): string {
  return context.preferences.length;
}

export function distanceUnit(context: SheetContext): string {
  return context.preferences.distance === 'nm' ? 'NM' : 'km';
}
