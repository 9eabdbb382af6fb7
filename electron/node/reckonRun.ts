import { inWords, reckon, SUMS } from '../../core/reckon/sums.ts';
import type { Answer, Sum } from '../../core/reckon/types.ts';
import { batchCsv, batchJson, doRows, failureLines, readRows } from './reckonBatch.ts';

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
    'another of a CSV file whose header names the keys (and the sum, in a column "sum", where it is not on the line); a row\n' +
    'that cannot be done says why in the column "error", and the others are done all the same.\n';
  return good([`${USAGE}\n`, intro, ...sums.map(helpOf)].join('\n'));
}

function helpOf(sum: Sum): string {
  const width = 2 + Math.max(10, ...sum.parameters.map(({ key }) => key.length));
  const lines = sum.parameters.map((parameter) => {
    const { key, fallback } = parameter;
    const isChoice = sum.oneOf?.includes(key) === true;
    const note = fallback !== undefined ? ` (${fallback} when left out)` : isChoice ? ' (one of these)' : '';
    return `    ${key.padEnd(width)}${inWords(parameter)}${note}`;
  });
  const needed = sum.parameters.filter(
    ({ key, fallback }) => fallback === undefined && !sum.oneOf?.slice(1).includes(key),
  );
  const example = needed.map(({ key, example: value }) => `${key}=${value}`).join(' ');
  return [`${sum.id}: ${sum.title}`, ...lines, `    e.g. ${sum.id} ${example}`, `    source: ${sum.source}`, ''].join(
    '\n',
  );
}

function batch(request: Request, path: string, readText: (path: string) => string): CommandResult {
  const read = readTable(path, readText);
  if (typeof read === 'string') return bad(read);
  const done = doRows(read, request.sumId, request.typed);
  const stderr = failureLines(done);
  return { exitCode: stderr === '' ? 0 : 2, stdout: request.isJson ? batchJson(done) : batchCsv(done), stderr };
}

/** The rows, or the sentence that says why there are none. */
function readTable(path: string, readText: (path: string) => string): ReturnType<typeof readRows> | string {
  try {
    const rows = readRows(readText(path));
    return rows.length > 0
      ? rows
      : `${path} has no rows: its first line names the keys, each line after it is one case.`;
  } catch (error) {
    return `${path} cannot be read as a CSV table: ${error instanceof Error ? error.message : String(error)}`;
  }
}
