import { issueText } from '../model/issues.ts';
import { PROJECT_VERSION, type Project, projectSchema } from '../model/project.ts';
import { excerpt, findSyntaxFault, lineAndColumn, MAX_DEPTH } from './jsonSyntax.ts';
import { MIGRATIONS, type Migration, migrate, type RawDocument } from './migrations.ts';
import { type Problem, placeInFile } from './problem.ts';
import { checkReferences } from './references.ts';

/** Largest text that is read, characters (each at least a byte). */
export const MAX_TEXT_LENGTH = 50_000_000;

/** Most problems told at once. */
const MAX_PROBLEMS = 20;

/** A loaded project with remarks about it, or every reason why nothing was loaded. */
export type LoadResult =
  | { readonly ok: true; readonly project: Project; readonly notes: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The versions a reader knows; injected in tests of the mechanism. */
export interface Versions {
  readonly current: number;
  readonly migrations: readonly Migration[];
}

const VERSIONS: Versions = { current: PROJECT_VERSION, migrations: MIGRATIONS };

/**
 * Reads a `*.backstay` text. Never throws and never loads half: either the whole document is valid in itself and in its
 * references, or the problems say where, what and how to mend (at most 20, then how many more).
 */
export function parseProject(text: string, versions: Versions = VERSIONS): LoadResult {
  const read = readJson(text);
  if ('problem' in read) return refused([read.problem]);
  const document = documentOf(read.value, versions.current);
  if ('problem' in document) return refused([document.problem]);
  const migrated = upToDate(document.value, document.version, versions);
  if ('problem' in migrated) return refused([migrated.problem]);
  const result = projectSchema.safeParse(migrated.value);
  if (!result.success) return refused(schemaProblems(result.error.issues, migrated.value));
  const { problems, notes } = checkReferences(result.data);
  if (problems.length > 0) return refused(problems);
  return { ok: true, project: result.data, notes: [...migrated.notes, ...notes] };
}

/** A problem as one line for a terminal or a message. */
export function problemSentence({ where, what, mend }: Problem): string {
  return `${where}: ${what} ${mend}`;
}

type Step<T> = T | { readonly problem: Problem };

function readJson(text: string): Step<{ readonly value: unknown }> {
  if (text.length > MAX_TEXT_LENGTH) {
    return problem(
      'the whole file',
      `It is ${Math.ceil(text.length / 1e6)} MB; the most that is read is ${MAX_TEXT_LENGTH / 1e6} MB.`,
      'Check that it is a Backstay document, or divide it into several boats.',
    );
  }
  // Some editors put a byte order mark in front.
  const bare = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (bare.trim() === '') {
    return problem('the whole file', 'The file is empty.', 'Open a backup, or start a new boat.');
  }
  try {
    const value: unknown = JSON.parse(bare);
    if (isDeeperThan(value, MAX_DEPTH)) {
      return problem(
        'the whole file',
        `It is nested more than ${MAX_DEPTH} deep.`,
        'This is not a Backstay document: open another file.',
      );
    }
    return { value };
  } catch {
    return { problem: syntaxProblem(bare) };
  }
}

function syntaxProblem(text: string): Problem {
  const fault = findSyntaxFault(text);
  if (!fault) return { where: 'the whole file', what: 'It is not JSON.', mend: 'Open a backup.' };
  const { line, column } = lineAndColumn(text, fault.index);
  const near = excerpt(text, fault.index);
  return {
    where: `line ${line}, column ${column}`,
    what: `${fault.what}${near === '' ? '' : `, near ${near}`}.`,
    mend: fault.mend,
  };
}

/** Walks breadth first, so that no nesting can exhaust the stack. */
function isDeeperThan(value: unknown, depth: number): boolean {
  let level: unknown[] = [value];
  for (let at = 0; level.length > 0; at += 1) {
    if (at > depth) return true;
    level = level.flatMap((entry) => (typeof entry === 'object' && entry !== null ? Object.values(entry) : []));
  }
  return false;
}

function documentOf(value: unknown, current: number): Step<{ readonly value: RawDocument; readonly version: number }> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const kind = Array.isArray(value) ? 'a list' : 'a single value';
    return problem(
      'the whole file',
      `It holds ${kind}, not a Backstay document.`,
      'Open a file that ends in .backstay.',
    );
  }
  const document = value as RawDocument;
  if (document.format !== 'backstay') {
    const found =
      typeof document.format === 'string' ? `The format is "${document.format.slice(0, 40)}"` : 'The format is missing';
    return problem(
      'format',
      `${found}; a Backstay document says "format": "backstay".`,
      'Open a file that ends in .backstay.',
    );
  }
  const version = document.version;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return problem(
      'version',
      'The version of the file is not a whole number from 1 up.',
      `Put in "version": ${current} if the file was made by this version, or open a backup.`,
    );
  }
  if (version > current) {
    return problem(
      'version',
      `The file was made by a newer version of Backstay: it has file version ${version}, and this one reads up to ${current}.`,
      'Update Backstay and open it again.',
    );
  }
  return { value: document, version };
}

function upToDate(
  document: RawDocument,
  version: number,
  versions: Versions,
): Step<{ readonly value: RawDocument; readonly notes: readonly string[] }> {
  if (version === versions.current) return { value: document, notes: [] };
  try {
    const value = migrate(document, version, versions.migrations, versions.current);
    return {
      value,
      notes: [`Brought from file version ${version} up to ${versions.current}; saving writes the new version.`],
    };
  } catch {
    // A migration works on raw JSON and may find anything there; whatever it stumbles over, the document is not sound.
    return problem(
      'the whole file',
      `It has the older file version ${version} and could not be brought up to ${versions.current}.`,
      'Open it with the version that made it and check it there, or open a backup.',
    );
  }
}

type Issues = NonNullable<ReturnType<typeof projectSchema.safeParse>['error']>['issues'];

function schemaProblems(issues: Issues, document: unknown): Problem[] {
  return issues.map((issue) => ({
    where: placeInFile(issue.path, document),
    ...issueText(issue, document, projectSchema),
  }));
}

function problem(where: string, what: string, mend: string): { readonly problem: Problem } {
  return { problem: { where, what, mend } };
}

function refused(problems: readonly Problem[]): LoadResult {
  if (problems.length <= MAX_PROBLEMS) return { ok: false, problems };
  const more = problems.length - MAX_PROBLEMS;
  const rest: Problem = {
    where: 'the whole file',
    what: `There ${more === 1 ? 'is 1 more problem' : `are ${more} more problems`} that ${more === 1 ? 'is' : 'are'} not listed here.`,
    mend: 'Mend these first and open it again.',
  };
  return { ok: false, problems: [...problems.slice(0, MAX_PROBLEMS), rest] };
}
