import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { noteWorst } from '../support/worst.ts';

/** One row of a table under tests/published/data: text by column. Lines that start with `#` say where it comes from. */
export type Row = Readonly<Record<string, string>>;

export function readTable(name: string): Row[] {
  const text = readFileSync(new URL(`./data/${name}`, import.meta.url), 'utf8');
  return parse(text, { columns: true, comment: '#', comment_no_infix: true, skip_empty_lines: true }) as Row[];
}

/** A cell as a number; a missing or empty one is a fault of the table. */
export function cell(row: Row, column: string): number {
  const text = row[column];
  const value = text === undefined || text === '' ? Number.NaN : Number(text);
  if (Number.isNaN(value)) throw new Error(`No number in column ${column} of ${JSON.stringify(row)}.`);
  return value;
}

/** The largest difference over the rows of a table and the row it is in, for the message of a check. */
export function worst(rows: readonly Row[], difference: (row: Row) => number): { error: number; row: Row | undefined } {
  let found: { error: number; row: Row | undefined } = { error: 0, row: undefined };
  for (const row of rows) {
    const error = Math.abs(difference(row));
    if (!(error <= found.error)) found = { error, row };
  }
  noteWorst(`worst ${found.error} of ${rows.length}`);
  return found;
}
