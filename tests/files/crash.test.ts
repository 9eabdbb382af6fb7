import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseProject } from '../../core/document/load.ts';
import { DocumentTable } from '../../electron/node/documents.ts';
import { RecoveryStore } from '../../electron/node/recovery/recovery.ts';
import { bundleChild, openFolder } from './bundle.ts';
import { Random } from './random.ts';
import { changeIn, isSavedAt, textOf } from './savedTexts.ts';

// A process that keeps and saves is killed, first at every single step of a save, then at random moments of hundreds of
// saves. A kill shows what stands under the names at any moment; what a power cut does to a disk's own cache it cannot
// show: for that there is powerCut.test.ts.

const SEED = Number(process.env.BACKSTAY_CRASH_SEED ?? 20_261_126);
const ROUNDS = Number(process.env.BACKSTAY_CRASH_ROUNDS ?? 200);
/** Latest kill after the process has begun to work, ms: time for a few saves. */
const LONGEST_MS = 120;

let child = '';
const folder = openFolder('crash');
const file = join(folder, 'boat.backstay');
const previous = join(folder, 'boat.backstay~');

beforeAll(async () => {
  child = await bundleChild();
});
afterAll(() => {
  for (const path of [folder, dirname(child)]) rmSync(path, { recursive: true, force: true });
});

/** Which change a file holds; fails the test where it is not one whole document. */
function changeOf(path: string): number {
  const n = changeIn(readFileSync(path, 'utf8'));
  if (n === null) throw new Error(`${path} is not a whole document`);
  return n;
}

function freshFolder(): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  writeFileSync(file, textOf(0));
}

describe('a process killed at every step of a save in turn', () => {
  it('leaves the old or the new document, whole, and the next save clears up after it', async () => {
    const outcomes: (number | null)[] = [];
    for (let step = 1; ; step += 1) {
      freshFolder();
      const { signal, stdout } = spawnSync(process.execPath, [child, 'die-at', folder, String(step)], {
        encoding: 'utf8',
      });
      outcomes.push(changeOf(file));
      if (readdirSync(folder).includes('boat.backstay~')) expect(changeOf(previous)).toBe(0);
      await saveAfterwards(2);
      if (signal === null) {
        expect(stdout).toBe(`steps ${step - 1}\n`);
        break;
      }
      expect(signal).toBe('SIGKILL');
    }
    // Old for every step up to the rename, new from there on: both have been seen, and there is no way back.
    expect(outcomes.length).toBeGreaterThan(15);
    expect(outcomes).toEqual(outcomes.toSorted());
    expect(new Set(outcomes)).toEqual(new Set([0, 1]));
  });
});

/** The next session's save: goes through, keeps what was there, leaves no litter of the process that died. */
async function saveAfterwards(n: number): Promise<void> {
  const before = changeOf(file);
  const documents = new DocumentTable();
  const { handle } = await documents.open(file);
  expect((await documents.save(handle, textOf(n))).kind).toBe('saved');
  expect([changeOf(file), changeOf(previous)]).toEqual([n, before]);
  expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
}

/** What a killed process had said: the last change kept, and the last saved; -1 for none. */
interface Said {
  readonly kept: number;
  readonly saved: number;
}

function killAfter(ms: number, first: number): Promise<Said & { readonly saves: number }> {
  return new Promise((resolve, reject) => {
    const process_ = spawn(process.execPath, [child, 'work', folder, String(first)]);
    let out = '';
    let errors = '';
    let isTimed = false;
    process_.stderr.on('data', (words: Buffer) => {
      errors += words.toString();
    });
    process_.stdout.on('data', (words: Buffer) => {
      out += words.toString();
      if (!isTimed) setTimeout(() => process_.kill('SIGKILL'), ms);
      isTimed = true;
    });
    process_.on('close', (_code, signal) => {
      if (signal !== 'SIGKILL') reject(new Error(`the process ended by itself: ${errors}`));
      const last = (what: string): number =>
        Math.max(-1, ...[...out.matchAll(new RegExp(`^${what} (\\d+)\\n`, 'gm'))].map(([, n]) => Number(n)));
      resolve({ kept: last('kept'), saved: last('saved'), saves: out.split('saved').length - 1 });
    });
  });
}

describe(`a process killed at random moments (seed ${SEED}, ${ROUNDS} rounds)`, () => {
  it('leaves a whole document every time, and nothing is lost that had been kept', async () => {
    const random = new Random(SEED);
    freshFolder();
    let held = { file: 0, copy: null as number | null };
    let saves = 0;
    for (let round = 1; round <= ROUNDS; round += 1) {
      const first = Math.max(held.file, held.copy ?? 0) + 2;
      const ms = random.below(LONGEST_MS * 4) / 4;
      const said = await killAfter(ms, first);
      saves += said.saves;
      const at = `round ${round}, seed ${SEED}, killed after ${ms} ms`;
      held = await inspect(held, first, said, at);
    }
    expect(saves).toBeGreaterThan(ROUNDS / 4);
    expect(parseProject(readFileSync(file, 'utf8')).ok).toBe(true);
    rmSync(join(folder, 'recovery'), { recursive: true });
    await saveAfterwards(1);
  }, 600_000);
});

type Held = { readonly file: number; readonly copy: number | null };

/** Compares what is on the disk after a kill with what the process had said up to then. */
async function inspect(before: Held, first: number, { kept, saved }: Said, at: string): Promise<Held> {
  const now = { file: changeOf(file), copy: await copyOf(at) };
  // The file: what was saved last, or what was being saved.
  const lastSaved = saved < 0 ? before.file : saved;
  const isSaving = kept > saved && isSavedAt(kept);
  expect([lastSaved, ...(isSaving ? [kept] : [])], at).toContain(now.file);
  // The recovery copy: what was kept last or was being kept; none only where its work was saved, or none was there.
  const mayKeep = kept < 0 ? [before.copy, first] : [kept, kept + 1, ...(saved === kept ? [null] : [])];
  expect(mayKeep, at).toContain(now.copy);
  expect(Math.max(now.file, now.copy ?? -1), at).toBeGreaterThanOrEqual(Math.max(kept, before.file, before.copy ?? -1));
  if (readdirSync(folder).includes('boat.backstay~')) expect(changeOf(previous), at).toBeLessThanOrEqual(now.file);
  return now;
}

/** Which change the recovery folder offers, null for none; fails the test where it offers anything but a whole one. */
async function copyOf(at: string): Promise<number | null> {
  const store = new RecoveryStore(join(folder, 'recovery'));
  const offered = await store.list();
  if (offered.length === 0) return null;
  expect(offered, at).toHaveLength(1);
  expect(offered[0]?.summary, at).toMatch(/^\d+ items, \d+ runs/);
  const entry = await store.read('crash');
  expect(entry.isWhole, at).toBe(true);
  return changeIn(entry.text);
}
