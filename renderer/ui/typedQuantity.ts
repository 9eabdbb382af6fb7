import { KM_PER_NM, M_PER_FT, M_PER_IN } from '../../core/units/constants.ts';
import { awgAreaMm2, formatNumber, shownQuantity } from '../../core/units/format.ts';
import { parseNumber, storedValue } from '../../core/units/parse.ts';
import type { UnitPreferences } from '../../core/units/preferences.ts';
import type { Unit } from '../../core/units/quantity.ts';

/** What a field holds and may hold, in stored units. */
export interface QuantityRule {
  readonly unit: Unit;
  readonly digits?: number;
  readonly min?: number;
  readonly max?: number;
  /** Whether it may be left empty. */
  readonly isOptional?: boolean;
}

/** What was typed, in the stored unit (null: left empty), or why it cannot be taken. */
export type Typed =
  | { readonly isValid: true; readonly stored: number | null }
  | { readonly isValid: false; readonly problem: string };

/** Units that may be typed behind a number instead of the field's own, and what one of them is in the stored unit. */
const TYPED_UNITS: Readonly<Partial<Record<Unit, Readonly<Record<string, number>>>>> = {
  m: { m: 1, cm: 0.01, mm: 0.001, ft: M_PER_FT, "'": M_PER_FT, in: M_PER_IN, '"': M_PER_IN },
  mm: { mm: 1, cm: 10, m: 1000, in: M_PER_IN * 1000, '"': M_PER_IN * 1000, ft: M_PER_FT * 1000 },
  km: { km: 1, m: 0.001, nm: KM_PER_NM, nmi: KM_PER_NM },
  MHz: { mhz: 1, khz: 0.001, ghz: 1000 },
  W: { w: 1, kw: 1000 },
  V: { v: 1, mv: 0.001 },
  A: { a: 1, ma: 0.001 },
  mm2: { mm2: 1, 'mm²': 1 },
};

/** The stored value as the field shows it: in the reader's unit and decimal mark; empty for null. */
export function shownText(
  value: number | null,
  { unit, digits }: Pick<QuantityRule, 'unit' | 'digits'>,
  preferences: UnitPreferences,
): string {
  if (value === null) return '';
  const shown = shownQuantity(digits === undefined ? { value, unit } : { value, unit, digits }, preferences);
  return formatNumber(shown.value, shown.digits, preferences);
}

/** Reads what was typed: a number in the reader's unit, or in another unit that is typed with it (`40 ft`, `12' 6"`). */
export function readTyped(text: string, rule: QuantityRule, preferences: UnitPreferences): Typed {
  if (text.trim() === '' && rule.isOptional) return { isValid: true, stored: null };
  const stored = storedOf(text, rule.unit, preferences);
  if (stored === 'unit') return { isValid: false, problem: unitProblem(rule.unit, preferences) };
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = rule;
  // A hair of slack, so that a limit shown rounded can be typed as shown; what is stored keeps inside the limit.
  const slack = 1e-3 * Math.max(1, Math.abs(stored ?? 0));
  if (stored === null || stored < min - slack || stored > max + slack) {
    return { isValid: false, problem: rangeProblem(rule, preferences) };
  }
  return { isValid: true, stored: Math.min(max, Math.max(min, stored)) };
}

/** Null for what is no number; `unit` for a number with a unit that does not belong here. */
function storedOf(text: string, unit: Unit, preferences: UnitPreferences): number | null | 'unit' {
  const feet = unit === 'm' ? feetAndInches(text) : null;
  if (feet !== null) return feet;
  const match = /^\s*([+\-−]?[\d.,\s]*\d[.,]?)\s*(\S*)\s*$/.exec(text);
  const typed = parseNumber(match?.[1] ?? '');
  if (match === null || typed === null) return null;
  const suffix = (match[2] ?? '').replace(/[′’]/, "'").replace(/[″”]/, '"').toLowerCase();
  if (suffix === '') return storedValue(typed, unit, preferences);
  if (unit === 'mm2' && suffix === 'awg') return awgAreaMm2(typed);
  const factor = TYPED_UNITS[unit]?.[suffix];
  if (factor !== undefined) return typed * factor;
  const own = shownQuantity({ value: 0, unit }, preferences).symbol.toLowerCase();
  return suffix === own ? storedValue(typed, unit, preferences) : 'unit';
}

/** `12' 6"` and `12 ft 6 in`, m. */
function feetAndInches(text: string): number | null {
  const match = /^\s*(\d+)\s*(?:'|′|’|ft)\s*(\d+(?:[.,]\d+)?)\s*(?:"|″|”|in)?\s*$/i.exec(text);
  const inches = parseNumber(match?.[2] ?? '');
  return match === null || inches === null ? null : Number(match[1]) * M_PER_FT + inches * M_PER_IN;
}

function unitProblem(unit: Unit, preferences: UnitPreferences): string {
  const { symbol } = shownQuantity({ value: 0, unit }, preferences);
  return symbol === '' ? 'Type the number alone.' : `Type the number alone, or with ${symbol}.`;
}

function rangeProblem(rule: QuantityRule, preferences: UnitPreferences): string {
  const { min, max } = rule;
  const { symbol } = shownQuantity({ value: 0, unit: rule.unit }, preferences);
  const unit = symbol === '' ? '' : ` ${symbol}`;
  const show = (limit: number): string => shownText(limit, rule, preferences);
  if (min !== undefined && max !== undefined) return `Type a number from ${show(min)} to ${show(max)}${unit}.`;
  if (min !== undefined) return `Type a number of at least ${show(min)}${unit}.`;
  if (max !== undefined) return `Type a number of at most ${show(max)}${unit}.`;
  return 'Type a number.';
}
