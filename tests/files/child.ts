import { readFileSync, writeFileSync, writeSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { DocumentTable } from '../../electron/node/documents.ts';
import { RecoveryStore } from '../../electron/node/recovery/recovery.ts';
import { faultyParts } from './faultyParts.ts';
import { isSavedAt, textOf } from './savedTexts.ts';

// The program's part in the crash and full-disk tests: one process that keeps and saves, and says what it has done.

/** One line, handed to the system before the next step, so that it outlives a kill. */
const say = (...words: readonly unknown[]): void => void writeSync(1, `${words.join(' ')}\n`);

/** Changes, keeps and saves without end, from change `first` on, until killed. */
async function work(folder: string, first: number): Promise<void> {
  const documents = new DocumentTable();
  const recovery = new RecoveryStore(join(folder, 'recovery'));
  const path = join(folder, 'boat.backstay');
  const { handle } = await documents.open(path);
  say('ready');
  for (let n = first; ; n += 1) {
    const text = textOf(n);
    await recovery.keep({ documentId: 'crash', path, name: 'boat.backstay', title: `Change ${n}`, text });
    say('kept', n);
    if (!isSavedAt(n)) continue;
    const { kind } = await documents.save(handle, text);
    if (kind !== 'saved') throw new Error(kind);
    say('saved', n);
    await recovery.drop('crash');
    say('dropped', n);
  }
}

/** Saves change 1 and dies at the given step of it; says how many steps there were if it lives. */
async function dieAt(folder: string, step: number): Promise<void> {
  let counted = 0;
  let isCounting = false;
  const { parts } = faultyParts(() => {
    if (isCounting) counted += 1;
    return isCounting && counted === step ? () => process.kill(process.pid, 'SIGKILL') : null;
  });
  const documents = new DocumentTable(parts);
  const { handle } = await documents.open(join(folder, 'boat.backstay'));
  isCounting = true;
  await documents.save(handle, textOf(1));
  say('steps', counted);
}

/** Saves and keeps a text; says what came of each, as JSON. */
async function saveOnce(folder: string, n: number): Promise<void> {
  const documents = new DocumentTable();
  const recovery = new RecoveryStore(join(folder, 'recovery'));
  const path = join(folder, 'boat.backstay');
  const outcome = (work: Promise<unknown>): Promise<string> =>
    work.then(
      () => '',
      (error: Error) => error.message,
    );
  const { handle } = await documents.open(path);
  const save = await outcome(documents.save(handle, textOf(n)));
  const kept = { documentId: 'full', path, name: 'boat.backstay', title: 'Full', text: textOf(n) };
  say(JSON.stringify({ save, keep: await outcome(recovery.keep(kept)) }));
}

/** Fills a small disk again and again to another brim, and saves and keeps on it each time. */
async function fillDisk(folder: string, rounds: number): Promise<void> {
  const documents = new DocumentTable();
  const recovery = new RecoveryStore(join(folder, 'recovery'));
  const path = join(folder, 'boat.backstay');
  const filler = join(folder, 'filler');
  writeFileSync(path, textOf(0));
  const { handle } = await documents.open(path);
  let last = 0;
  let kept = 0;
  for (let n = 1; n <= rounds; n += 1) {
    // From no room at all to plenty, in steps that are not those of the disk's blocks.
    writeFileSync(filler, '');
    fillTo(filler, ((n * 37) % rounds) * 7919);
    const text = textOf(n);
    const save = await documents.save(handle, text).then(
      ({ kind }) => kind,
      (error: Error) => error.message,
    );
    const file = readFileSync(path, 'utf8');
    const isRight = file === (save === 'saved' ? text : textOf(last));
    if (save === 'saved') last = n;
    const entry = { documentId: 'full', path, name: 'boat.backstay', title: 'Full', text };
    const keep = await recovery.keep(entry).then(
      () => 'kept',
      (error: Error) => error.message,
    );
    if (keep === 'kept') kept = n;
    const copy = kept === 0 ? true : (await recovery.read('full')).text === textOf(kept);
    const litter = (await readdir(folder)).filter((name) => name.endsWith('.tmp')).length;
    say(JSON.stringify({ n, save, isRight, keep, copy, litter }));
  }
}

/** Writes zeros until only `roomBytes` are left. */
function fillTo(filler: string, roomBytes: number): void {
  const step = Buffer.alloc(4096);
  let size = 0;
  try {
    for (;;) {
      writeFileSync(filler, step, { flag: 'a' });
      size += step.length;
    }
  } catch {
    writeFileSync(filler, Buffer.alloc(Math.max(0, size - roomBytes)));
  }
}

const [mode, folder = '', value = '0'] = process.argv.slice(2);
if (mode === 'work') await work(folder, Number(value));
else if (mode === 'die-at') await dieAt(folder, Number(value));
else if (mode === 'save-once') await saveOnce(folder, Number(value));
else if (mode === 'fill-disk') await fillDisk(folder, Number(value));
else throw new Error(`unknown mode ${mode}`);
