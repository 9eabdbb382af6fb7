import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { inWords, reckon, SUMS } from '../../core/reckon/sums.ts';
import type { Answer, Sum } from '../../core/reckon/types.ts';

export interface CommandResult {
  readonly exitCode: 0 | 2;
  readonly stdout: string;
  readonly stderr: string;
}

interface Request {
  readonly sumId: string | null;
  readonly typed: Readonly<Record<string, string>>;
  readonly isJson: boolean;
  readonly batchPath: string | null;
  readonly isHelp: boolean;
}

const USAGE = 'npm run -s reckon -- SUM key=value ... [--json] [--batch FILE.csv] [--help]';

/**
 * The bench sums on the command line. Never throws for what a person typed or a file holds: exit code 2 with one sentence
 * on stderr. `readText` reads the batch file and may throw.
 */
export function runReckon(args: readonly string[], readText: (path: string) => string): CommandResult {
  const request = readArguments(args);
  if (typeof request === 'string') return bad(request);
  if (request.isHelp) return help(request.sumId);
  if (request.batchPath !== null) return batch(request, request.batchPath, readText);
  if (request.sumId === null) return bad(`Say which sum: ${SUMS.map(({ id }) => id).join(', ')}. ${USAGE}`);
  const reckoned = reckon(request.sumId, request.typed);
  if (!reckoned.ok) return bad(reckoned.message);
  const { sum, answers } = reckoned;
  return good(request.isJson ? `${JSON.stringify(asJson(sum, answers), null, 2)}\n` : asText(sum, answers));
}

const good = (stdout: string): CommandResult => ({ exitCode: 0, stdout, stderr: '' });
const bad = (sentence: string): CommandResult => ({ exitCode: 2, stdout: '', stderr: `${sentence}\n` });

function readArguments(args: readonly string[]): Request | string {
  const typed: Record<string, string> = {};
  let sumId: string | null = null;
  let batchPath: string | null = null;
  let isJson = false;
  let isHelp = false;
  for (let i = 0; i < args.length; i += 1) {
    const word = args[i] ?? '';
    const [, key, value] = /^([A-Za-z][A-Za-z0-9]*)=(.*)$/s.exec(word) ?? [];
    if (word === '--json') isJson = true;
    else if (word === '--help' || word === '-h') isHelp = true;
    else if (word === '--batch') {
      i += 1;
      batchPath = args[i] ?? '';
      if (batchPath === '' || batchPath.startsWith('--')) return '--batch needs a file, e.g. --batch cases.csv.';
    } else if (word.startsWith('-')) return `There is no option ${word}. ${USAGE}`;
    else if (key !== undefined) {
      if (key in typed) return `${key} is given twice.`;
      typed[key] = value ?? '';
    } else if (sumId === null) sumId = word;
    else return `"${word}" is not key=value. ${USAGE}`;
  }
  return { sumId, typed, isJson, batchPath, isHelp };
}

function asText(sum: Sum, answers: readonly Answer[]): string {
  const width = Math.max(...answers.map(({ label }) => label.length));
  const lines = answers.map(
    ({ label, value, unit, digits }) => `  ${label.padEnd(width)}  ${value.toFixed(digits)} ${unit}`,
  );
  return [sum.title, ...lines.map((line) => line.trimEnd()), `  source: ${sum.source}`, ''].join('\n');
}

function asJson(sum: Sum, answers: readonly Answer[]): unknown {
  const results = Object.fromEntries(answers.map(({ key, label, value, unit }) => [key, { value, unit, label }]));
  return { sum: sum.id, results, source: sum.source };
}

function help(sumId: string | null): CommandResult {
  if (sumId !== null && !SUMS.some(({ id }) => id === sumId)) {
    return bad(`There is no sum "${sumId}": take one of ${SUMS.map(({ id }) => id).join(', ')}.`);
  }
  const sums = SUMS.filter(({ id }) => sumId === null || id === sumId);
  const intro =
    'Numbers may have a decimal point or comma. --json prints values at full precision. --batch does one row after\n' +
    'another of a CSV file whose header names the keys (and the sum, in a column "sum", where it is not on the line).\n';
  return good([`${USAGE}\n`, intro, ...sums.map(helpOf)].join('\n'));
}

function helpOf(sum: Sum): string {
  const lines = sum.parameters.map((parameter) => {
    const { key, fallback } = parameter;
    const isChoice = sum.oneOf?.includes(key) === true;
    const note = fallback !== undefined ? ` (${fallback} when left out)` : isChoice ? ' (one of these)' : '';
    return `    ${key.padEnd(12)}${inWords(parameter)}${note}`;
  });
  const needed = sum.parameters.filter(
    ({ key, fallback }) => fallback === undefined && !sum.oneOf?.slice(1).includes(key),
  );
  const example = needed.map(({ key, example: value }) => `${key}=${value}`).join(' ');
  return [`${sum.id}: ${sum.title}`, ...lines, `    e.g. ${sum.id} ${example}`, `    source: ${sum.source}`, ''].join(
    '\n',
  );
}

type Cells = Readonly<Record<string, string>>;

function batch(request: Request, path: string, readText: (path: string) => string): CommandResult {
  let rows: readonly Cells[];
  try {
    rows = readRows(readText(path));
  } catch (error) {
    return bad(`${path} cannot be read as a CSV table: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (rows.length === 0)
    return bad(`${path} has no rows: its first line names the keys, each line after it is one case.`);
  const done = rows.map((row) => doRow(request, row));
  const failures = done.filter(({ error }) => error !== '').length;
  const stderr =
    failures === 0 ? '' : `${failures} of ${rows.length} rows could not be done; see the column "error".\n`;
  return { exitCode: failures === 0 ? 0 : 2, stdout: request.isJson ? batchJson(done) : batchCsv(done), stderr };
}

/** Comma or semicolon, whichever the header uses more: sheets with decimal commas use the semicolon. */
function readRows(text: string): readonly Cells[] {
  const header = text.slice(0, text.search(/[\r\n]|$/));
  const delimiter = header.split(';').length > header.split(',').length ? ';' : ',';
  return parse(text, { columns: true, bom: true, delimiter, skip_empty_lines: true, trim: true }) as Cells[];
}

interface Done {
  readonly row: Cells;
  readonly answers: readonly Answer[];
  readonly error: string;
}

function doRow(request: Request, row: Cells): Done {
  const { sum: rowSum, ...cells } = row;
  const sumId = rowSum !== undefined && rowSum !== '' ? rowSum : request.sumId;
  if (sumId === null) return { row, answers: [], error: 'Say which sum: on the command line or in a column "sum".' };
  const given = Object.fromEntries(Object.entries(cells).filter(([, value]) => value !== ''));
  const reckoned = reckon(sumId, { ...request.typed, ...given });
  return reckoned.ok ? { row, answers: reckoned.answers, error: '' } : { row, answers: [], error: reckoned.message };
}

function batchCsv(done: readonly Done[]): string {
  const inputs = Object.keys(done[0]?.row ?? {});
  const results = [...new Set(done.flatMap(({ answers }) => answers.map(({ key }) => key)))];
  const lines = done.map(({ row, answers, error }) => {
    const byKey = new Map(answers.map(({ key, value }) => [key, String(Number(value.toPrecision(10)))]));
    return [...inputs.map((key) => row[key] ?? ''), ...results.map((key) => byKey.get(key) ?? ''), error];
  });
  return stringify([[...inputs, ...results, 'error'], ...lines]);
}

function batchJson(done: readonly Done[]): string {
  const entries = done.map(({ row, answers, error }) => ({
    given: row,
    ...(error === ''
      ? { results: Object.fromEntries(answers.map(({ key, value, unit }) => [key, { value, unit }])) }
      : { error }),
  }));
  return `${JSON.stringify(entries, null, 2)}\n`;
}
