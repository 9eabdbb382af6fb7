import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { reckon } from '../../core/reckon/sums.ts';
import type { Answer } from '../../core/reckon/types.ts';

type Cells = Readonly<Record<string, string>>;

/** One line of the table. */
export interface Row {
  /** As a sheet counts them, the header being row 1. */
  readonly number: number;
  readonly cells: Cells;
  /** Empty unless the row has more or fewer cells than the header. */
  readonly fault: string;
}

/** A row with its answers, or with the sentence that says why it has none. */
export interface DoneRow {
  readonly row: Row;
  readonly answers: readonly Answer[];
  readonly error: string;
}

/** Rows that cannot be done and are written out one by one; the rest are counted. */
const FAILURES_SHOWN = 10;

/**
 * The rows of a CSV table. Comma or semicolon, whichever the header uses more: sheets with decimal commas use the semicolon.
 * @throws Error when it is no such table, or two columns have one name
 */
export function readRows(text: string): readonly Row[] {
  const header = text.slice(0, text.search(/[\r\n]|$/));
  const delimiter = header.split(';').length > header.split(',').length ? ';' : ',';
  const records = parse(text, {
    bom: true,
    delimiter,
    skip_empty_lines: true,
    trim: true,
    relax_column_count: true,
    info: true,
  }) as unknown as readonly { readonly record: readonly string[]; readonly info: { readonly lines: number } }[];
  const [first, ...rest] = records;
  const names = first?.record ?? [];
  const twice = names.find((name, i) => name !== '' && names.indexOf(name) !== i);
  if (twice !== undefined) throw new Error(`two of its columns are called "${twice}".`);
  return rest.map(({ record, info }) => ({
    number: info.lines,
    cells: Object.fromEntries(names.map((name, i) => [name, record[i] ?? ''])),
    fault:
      record.length === names.length
        ? ''
        : `The header names ${names.length} columns, but this row has ${record.length}.`,
  }));
}

/** Every row by the sum it names, else by the one on the line; keys on the line serve the rows that leave them empty. */
export function doRows(
  rows: readonly Row[],
  sumId: string | null,
  typed: Readonly<Record<string, string>>,
): readonly DoneRow[] {
  return rows.map((row) => {
    const { sum, ...cells } = row.cells;
    const failed = (error: string): DoneRow => ({ row, answers: [], error });
    if (row.fault !== '') return failed(row.fault);
    const wanted = sum !== undefined && sum !== '' ? sum : sumId;
    if (wanted === null) return failed('Say which sum: on the command line or in a column "sum".');
    const given = Object.fromEntries(Object.entries(cells).filter(([, value]) => value !== ''));
    const reckoned = reckon(wanted, { ...typed, ...given });
    return reckoned.ok ? { row, answers: reckoned.answers, error: '' } : failed(reckoned.message);
  });
}

/** What stands on stderr: each row that failed with its reason, then how many. Empty when none did. */
export function failureLines(done: readonly DoneRow[]): string {
  const failed = done.filter(({ error }) => error !== '');
  if (failed.length === 0) return '';
  const lines = failed.slice(0, FAILURES_SHOWN).map(({ row, error }) => `Row ${row.number}: ${error}`);
  return [...lines, `${failed.length} of ${done.length} rows could not be done; see the column "error".`, ''].join(
    '\n',
  );
}

export function batchCsv(done: readonly DoneRow[]): string {
  const inputs = Object.keys(done[0]?.row.cells ?? {});
  const results = [...new Set(done.flatMap(({ answers }) => answers.map(({ key }) => key)))];
  const lines = done.map(({ row, answers, error }) => {
    const byKey = new Map(answers.map(({ key, value }) => [key, String(Number(value.toPrecision(10)))]));
    return [...inputs.map((key) => row.cells[key] ?? ''), ...results.map((key) => byKey.get(key) ?? ''), error];
  });
  return stringify([[...inputs, ...results, 'error'], ...lines]);
}

export function batchJson(done: readonly DoneRow[]): string {
  const entries = done.map(({ row, answers, error }) => ({
    row: row.number,
    given: row.cells,
    ...(error === ''
      ? { results: Object.fromEntries(answers.map(({ key, value, unit }) => [key, { value, unit }])) }
      : { error }),
  }));
  return `${JSON.stringify(entries, null, 2)}\n`;
}
