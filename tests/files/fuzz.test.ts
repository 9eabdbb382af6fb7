import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type LoadResult, parseProject, problemSentence } from '../../core/document/load.ts';
import { serialiseProject } from '../../core/document/save.ts';
import { strictText } from '../../electron/node/files/readWhole.ts';
import { KINDS, mutated } from './mutations.ts';
import { Random } from './random.ts';

// Thousands of documents gone bad. Each is loaded whole or refused with sentences, quickly, and never by halves.
// One case again: BACKSTAY_FUZZ_SEED=<the seed it names> BACKSTAY_FUZZ_ROUNDS=1.

const SEED = Number(process.env.BACKSTAY_FUZZ_SEED ?? 5_000_000);
const ROUNDS = Number(process.env.BACKSTAY_FUZZ_ROUNDS ?? 4000);
/** Longest a refusal may be, characters: it has to fit a dialog. */
const LONGEST_SENTENCE = 600;

const ROOT = join(import.meta.dirname, '../..');
const documentsIn = (folder: string): Buffer[] =>
  readdirSync(join(ROOT, folder))
    .filter((name) => name.endsWith('.backstay'))
    .map((name) => readFileSync(join(ROOT, folder, name)));
const [first, ...others] = [...documentsIn('assets/demo'), ...documentsIn('tests/unit/document/versions')];
if (first === undefined) throw new Error('there are no documents to start from');

/** What is wrong with how a document was taken; empty for nothing. */
function faultOf(bytes: Buffer): { readonly fault: string; readonly outcome: string } {
  let text = '';
  try {
    text = strictText(bytes, 'boat.backstay');
  } catch (error) {
    const { message } = error as Error;
    return { fault: /^boat\.backstay is .*\.$/.test(message) ? '' : `no sentence: ${message}`, outcome: 'not text' };
  }
  const before = process.cpuUsage();
  const result = parseProject(text);
  const { user, system } = process.cpuUsage(before);
  const cpuMs = (user + system) / 1000;
  if (cpuMs > 1000) return { fault: `took ${cpuMs.toFixed(0)} ms`, outcome: 'slow' };
  if (!result.ok) return { fault: faultInRefusal(result), outcome: 'refused' };
  return { fault: faultInLoad(text, result), outcome: 'loaded' };
}

function faultInRefusal({ problems }: Extract<LoadResult, { ok: false }>): string {
  if (problems.length === 0 || problems.length > 21) return `${problems.length} problems`;
  for (const problem of problems) {
    const sentence = problemSentence(problem);
    if (sentence.length > LONGEST_SENTENCE)
      return `a refusal of ${sentence.length} characters: ${sentence.slice(0, 300)}`;
    const isWhole = [problem.where, problem.what, problem.mend].every((words) => words.trim() !== '');
    if (!isWhole || !/[.?]$/.test(problem.what) || !/[.?]$/.test(problem.mend)) return `no sentence: ${sentence}`;
  }
  return '';
}

function faultInLoad(text: string, { project }: Extract<LoadResult, { ok: true }>): string {
  const lost = whatIsLost(JSON.parse(text.replace(/^\uFEFF/, '')), project, '');
  if (lost !== '') return `loaded without ${lost}`;
  const again = parseProject(serialiseProject(project));
  return again.ok && serialiseProject(again.project) === serialiseProject(project)
    ? ''
    : 'does not come back from a save';
}

/** The first place of a document that what was loaded of it does not have, or has differently; empty for none. */
function whatIsLost(written: unknown, loaded: unknown, place: string): string {
  if (typeof written !== 'object' || written === null) return written === loaded ? '' : place;
  if (typeof loaded !== 'object' || loaded === null) return place;
  if (Array.isArray(written) !== Array.isArray(loaded)) return place;
  if (Array.isArray(written) && Array.isArray(loaded) && written.length !== loaded.length) return place;
  for (const [key, value] of Object.entries(written)) {
    const lost = Object.hasOwn(loaded, key)
      ? whatIsLost(value, (loaded as Record<string, unknown>)[key], `${place}.${key}`)
      : `${place}.${key}`;
    if (lost !== '') return lost;
  }
  return '';
}

describe(`documents gone bad (seed ${SEED}, ${ROUNDS} of them)`, () => {
  it('are loaded whole or refused with sentences, never slowly and never by halves', () => {
    const outcomes = new Map<string, number>();
    const seen = new Set<string>();
    const faults: string[] = [];
    for (let seed = SEED; seed < SEED + ROUNDS && faults.length < 5; seed += 1) {
      const { bytes, ways } = mutated([first, ...others], new Random(seed));
      let found: ReturnType<typeof faultOf>;
      try {
        found = faultOf(bytes);
      } catch (error) {
        found = { fault: `threw ${error}`, outcome: 'threw' };
      }
      for (const way of ways) seen.add(way);
      outcomes.set(found.outcome, (outcomes.get(found.outcome) ?? 0) + 1);
      if (found.fault === '') continue;
      const path = join(tmpdir(), `backstay-fuzz-${seed}.backstay`);
      writeFileSync(path, bytes);
      faults.push(`seed ${seed} (${ways.join(', ')}), document in ${path}: ${found.fault}`);
    }
    expect(faults).toEqual([]);
    if (ROUNDS < 1000) return;
    // The mutations reach every kind of end, and all of them were made.
    for (const outcome of ['not text', 'refused', 'loaded']) {
      expect(outcomes.get(outcome) ?? 0, outcome).toBeGreaterThan(ROUNDS / 50);
    }
    expect([...seen].sort()).toEqual([...KINDS].sort());
  }, 3_600_000);
});
