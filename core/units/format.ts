import { KM_PER_NM, M_PER_FT, M_PER_IN } from './constants.ts';
import type { UnitPreferences } from './preferences.ts';
import type { Quantity, RichText, Unit } from './quantity.ts';

const DEFAULT_DIGITS: Readonly<Record<Unit, number>> = {
  m: 1,
  mm: 0,
  km: 1,
  dB: 2,
  dBm: 1,
  dBi: 1,
  W: 1,
  V: 2,
  A: 1,
  Ah: 0,
  MHz: 3,
  mm2: 1,
  percent: 0,
  degree: 0,
  hour: 1,
  kn: 1,
  ohm: 0,
  'ohm/km': 2,
  'g/m': 0,
  ratio: 2,
  count: 0,
};

const SYMBOLS: Readonly<Record<Unit, string>> = {
  m: 'm',
  mm: 'mm',
  km: 'km',
  dB: 'dB',
  dBm: 'dBm',
  dBi: 'dBi',
  W: 'W',
  V: 'V',
  A: 'A',
  Ah: 'Ah',
  MHz: 'MHz',
  mm2: 'mm²',
  percent: '%',
  degree: '°',
  hour: 'h',
  kn: 'kn',
  ohm: 'Ω',
  'ohm/km': 'Ω/km',
  'g/m': 'g/m',
  ratio: '',
  count: '',
};

/** AWG n has diameter 0.127 mm * 92^((36 - n)/39) (ASTM B258, from memory). */
export function awgAreaMm2(awg: number): number {
  const diameterMm = 0.127 * 92 ** ((36 - awg) / 39);
  return (Math.PI / 4) * diameterMm ** 2;
}

/** The nearest even AWG size to an area, as the trade writes it: `10 AWG`, `2/0 AWG`. */
export function nearestAwg(areaMm2: number): string {
  const sizes = [20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3];
  let best = 20;
  for (const size of sizes) {
    if (Math.abs(Math.log(awgAreaMm2(size) / areaMm2)) < Math.abs(Math.log(awgAreaMm2(best) / areaMm2))) best = size;
  }
  return best > 0 ? `${best} AWG` : `${1 - best}/0 AWG`;
}

/** A bare number in the reader's decimal mark. Minus is U+2212. */
export function formatNumber(value: number, digits: number, preferences: UnitPreferences): string {
  const rounded = Number(value.toFixed(digits));
  const text = Math.abs(rounded).toFixed(digits).replace('.', preferences.decimal);
  return rounded < 0 ? `−${text}` : text;
}

/** What a stored value reads as in the reader's unit: number, unit symbol and decimals. */
export function shownQuantity(
  quantity: Quantity,
  preferences: UnitPreferences,
): { value: number; symbol: string; digits: number } {
  const { value, unit } = quantity;
  const digits = quantity.digits ?? DEFAULT_DIGITS[unit];
  if (unit === 'm' && preferences.length === 'ft') return { value: value / M_PER_FT, symbol: 'ft', digits };
  if (unit === 'mm' && preferences.length === 'ft') {
    return { value: value / 1000 / M_PER_IN, symbol: 'in', digits: Math.max(digits, 2) };
  }
  if (unit === 'km' && preferences.distance === 'nm') return { value: value / KM_PER_NM, symbol: 'NM', digits };
  return { value, symbol: SYMBOLS[unit], digits };
}

/** A quantity with its unit, e.g. `5.30 dB`, `20.2 NM`, `70 %`. */
export function formatQuantity(quantity: Quantity, preferences: UnitPreferences): string {
  if (quantity.unit === 'mm2' && preferences.wire === 'awg') return nearestAwg(quantity.value);
  const shown = shownQuantity(quantity, preferences);
  const number = formatNumber(shown.value, shown.digits, preferences);
  if (shown.symbol === '') return number;
  return shown.symbol === '°' ? `${number}°` : `${number} ${shown.symbol}`;
}

/** Rich text in the reader's units. */
export function formatText(text: RichText, preferences: UnitPreferences): string {
  return text.map((piece) => (typeof piece === 'string' ? piece : formatQuantity(piece, preferences))).join('');
}

/** A chance as per cent: two figures, down to a thousandth, and below that only that it is less. */
export function formatChance(chance: number, preferences: UnitPreferences): string {
  const percent = 100 * chance;
  if (percent > 0 && percent < 0.001) return `< ${formatNumber(0.001, 3, preferences)} %`;
  const digits = percent === 0 || percent >= 9.95 ? 0 : 1 - Math.floor(Math.log10(percent) + 1e-9);
  return `${formatNumber(percent, digits, preferences)} %`;
}
