import { KM_PER_NM, M_PER_FT, M_PER_IN } from './constants.ts';
import type { UnitPreferences } from './preferences.ts';
import type { Unit } from './quantity.ts';

/**
 * A number as people type it: comma or point for decimals, spaces between thousands, a leading minus of either kind, a
 * unit after it ignored. Null for anything else.
 */
export function parseNumber(text: string): number | null {
  const plain = text
    .trim()
    .replace(/[\s\u00a0\u202f]/g, '')
    .replace('−', '-')
    .replace(',', '.');
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+))(?:[^\d.,]*)$/.exec(plain);
  return match?.[1] === undefined ? null : Number(match[1]);
}

/** What a number typed in the reader's unit is in the stored unit. The inverse of `shownQuantity`. */
export function storedValue(shown: number, unit: Unit, preferences: UnitPreferences): number {
  if (unit === 'm' && preferences.length === 'ft') return shown * M_PER_FT;
  if (unit === 'mm' && preferences.length === 'ft') return shown * M_PER_IN * 1000;
  if (unit === 'km' && preferences.distance === 'nm') return shown * KM_PER_NM;
  return shown;
}
