import type { UnitPreferences } from '../units/preferences.ts';

/** A cell: text, a number with its decimals, or nothing. */
export type CsvCell = string | { readonly value: number; readonly digits: number } | null;

/** Tells spreadsheets that the text is UTF-8; without it they show `mm²` and `Ω` garbled. */
const BYTE_ORDER_MARK = '\uFEFF';

/**
 * RFC 4180 text behind a byte order mark: CRLF, quotes doubled, a cell quoted when it holds the separator, a quote or a line break. With a decimal
 * comma the separator is a semicolon, as spreadsheets of those countries expect. Text that a spreadsheet would take for
 * a formula (it begins with = + - @, tab or return) gets an apostrophe in front; numbers stay numbers.
 */
export function csvText(
  header: readonly string[],
  rows: readonly (readonly CsvCell[])[],
  preferences: UnitPreferences,
): string {
  const separator = preferences.decimal === ',' ? ';' : ',';
  const line = (cells: readonly CsvCell[]): string =>
    cells.map((cell) => quoted(cellText(cell, preferences.decimal), separator)).join(separator);
  return `${BYTE_ORDER_MARK}${[header, ...rows].map(line).join('\r\n')}\r\n`;
}

function cellText(cell: CsvCell, decimal: '.' | ','): string {
  if (cell === null) return '';
  if (typeof cell === 'string') return /^[=+\-@\t\r\n]/u.test(cell) ? `'${cell}` : cell;
  if (!Number.isFinite(cell.value)) throw new RangeError('A CSV number must be finite.');
  const rounded = Number(cell.value.toFixed(cell.digits));
  return (rounded === 0 ? 0 : rounded).toFixed(cell.digits).replace('.', decimal);
}

function quoted(text: string, separator: string): string {
  return text.includes(separator) || /["\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
