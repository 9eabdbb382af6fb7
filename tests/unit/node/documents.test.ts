import {
  appendFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { MAX_DOCUMENT_BYTES, openedSchema, savedOrChangedSchema, savedSchema } from '../../../electron/contract.ts';
import { DocumentTable } from '../../../electron/node/documents.ts';
import { MACHINE_PARTS } from '../../../electron/node/files/parts.ts';
import { readWhole, strictText } from '../../../electron/node/files/readWhole.ts';
import { failsWith, faultyParts } from '../../files/faultyParts.ts';

let folder = '';
let file = '';
let documents = new DocumentTable();
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'backstay-documents-'));
  file = join(folder, 'boat.backstay');
  writeFileSync(file, 'first');
  documents = new DocumentTable();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const text = (path = file): string => readFileSync(path, 'utf8');
const sentence = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => '',
    (error: Error) => error.message,
  );

describe('a file that someone else changes', () => {
  it('is noticed before it is overwritten, and written over only when that is wanted; theirs is then kept', async () => {
    const { handle } = await documents.open(file);
    writeFileSync(file, 'theirs, longer');
    const answer = await documents.save(handle, 'mine', { overwrite: false });
    expect(savedOrChangedSchema.parse(answer)).toEqual({
      kind: 'changed-on-disk',
      name: 'boat.backstay',
      modifiedAt: statSync(file).mtime.toISOString(),
    });
    expect(text()).toBe('theirs, longer');
    expect((await documents.save(handle, 'mine', { overwrite: true })).kind).toBe('saved');
    expect([text(), text(`${file}~`)]).toEqual(['mine', 'theirs, longer']);
    expect((await documents.save(handle, 'mine again')).kind).toBe('saved');
  });

  it('is noticed although size and time are as they were', async () => {
    const { handle } = await documents.open(file);
    const { atime, mtime } = statSync(file);
    writeFileSync(file, 'frist');
    utimesSync(file, atime, mtime);
    expect((await documents.save(handle, 'mine')).kind).toBe('changed-on-disk');
  });

  it('is not suspected for a new time alone, as a sync or a backup leaves', async () => {
    const { handle } = await documents.open(file);
    utimesSync(file, 1, 1);
    expect((await documents.save(handle, 'mine')).kind).toBe('saved');
  });

  it('is noticed by the other of two windows with one file', async () => {
    const [one, other] = [await documents.open(file), await documents.open(file)];
    expect((await documents.save(one.handle, 'one')).kind).toBe('saved');
    expect((await documents.save(other.handle, 'other')).kind).toBe('changed-on-disk');
    expect(text()).toBe('one');
  });

  it('only one of two saves at the same moment goes through', async () => {
    const [one, other] = [await documents.open(file), await documents.open(file)];
    const answers = await Promise.all([documents.save(one.handle, 'one'), documents.save(other.handle, 'other')]);
    expect(answers.map(({ kind }) => kind)).toEqual(['saved', 'changed-on-disk']);
    expect(text()).toBe('one');
  });

  it('is written anew, with a note, where it was deleted', async () => {
    const { handle } = await documents.open(file);
    rmSync(file);
    const answer = savedOrChangedSchema.parse(await documents.save(handle, 'mine'));
    expect(answer).toMatchObject({
      kind: 'saved',
      notes: ['boat.backstay was no longer in its folder; it was written there again.'],
    });
    expect(text()).toBe('mine');
    expect(await documents.save(handle, 'more')).toEqual({ kind: 'saved', handle, name: 'boat.backstay' });
  });

  it('on a drive that is gone gives a sentence, and is saved when the drive is back', async () => {
    const { handle } = await documents.open(file);
    renameSync(folder, `${folder}-away`);
    expect(await sentence(documents.save(handle, 'mine'))).toBe(
      'boat.backstay could not be written: there is no such file or folder. Your work is still open here. ' +
        'If it is on a removable or network drive, connect that again.',
    );
    renameSync(`${folder}-away`, folder);
    expect((await documents.save(handle, 'mine')).kind).toBe('saved');
    expect(text()).toBe('mine');
  });

  it('that cannot be looked at is not written over blindly', async () => {
    const { handle } = await documents.open(file);
    const { parts } = faultyParts(({ name }) => (name === 'stat' ? failsWith('EIO') : null));
    const blind = new DocumentTable(parts);
    const adopted = blind.adopt(file, documents.stateOf(handle));
    expect(await sentence(blind.save(adopted, 'mine'))).toMatch(
      /^boat\.backstay could not be compared with what was opened: the drive does not answer\. Your work is still open/,
    );
    expect(text()).toBe('first');
  });
});

describe('saving', () => {
  it('keeps the version before the last change, however often the same is saved', async () => {
    const { handle } = await documents.open(file);
    for (const words of ['second', 'second', 'second']) await documents.save(handle, words);
    expect([text(), text(`${file}~`)]).toEqual(['second', 'first']);
  });

  it('as another file keeps what that held, and goes on there', async () => {
    const other = join(folder, 'other.backstay');
    writeFileSync(other, 'what was there');
    const saved = savedSchema.parse(await documents.saveAs(other, 'mine'));
    expect([saved.name, text(other), text(`${other}~`), text()]).toEqual([
      'other.backstay',
      'mine',
      'what was there',
      'first',
    ]);
    expect((await documents.save(saved.handle, 'more')).kind).toBe('saved');
    expect(documents.pathOf(saved.handle)).toBe(other);
  });

  it('refuses a document larger than is read again', async () => {
    const { handle } = await documents.open(file);
    expect(await sentence(documents.save(handle, 'x'.repeat(MAX_DOCUMENT_BYTES + 1)))).toMatch(
      /^The document is 50 MB; Backstay reads documents up to 50 MB\. Your work is still open here\./,
    );
    expect(text()).toBe('first');
  });

  it('goes through a link to its file', async () => {
    const link = join(folder, 'link.backstay');
    symlinkSync(file, link);
    const { handle } = await documents.open(link);
    expect((await documents.save(handle, 'mine')).kind).toBe('saved');
    expect(text()).toBe('mine');
  });

  it('of recovered work asks first, unless the file is still what the work began from', async () => {
    const { handle } = await documents.open(file);
    const origin = documents.stateOf(handle);
    const next = new DocumentTable();
    expect((await next.save(next.adopt(file), 'mine')).kind).toBe('changed-on-disk');
    expect((await next.save(next.adopt(file, origin), 'mine')).kind).toBe('saved');
    expect((await next.save(next.adopt(file, origin), 'late')).kind).toBe('changed-on-disk');
  });
});

describe('opening', () => {
  it('answers what the contract promises, with another document id each time', async () => {
    const [one, other] = [await documents.open(file), await documents.open(file)];
    expect(openedSchema.parse(one)).toMatchObject({ name: 'boat.backstay', text: 'first', notes: [] });
    expect(one.documentId).not.toBe(other.documentId);
  });

  it('tells how far it is and stops when it is cancelled', async () => {
    writeFileSync(file, 'x'.repeat(3_500_000));
    const told: number[] = [];
    await documents.open(file, ({ read, size }) => told.push(read / size));
    expect(told.length).toBeGreaterThanOrEqual(4);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
    expect(told.at(-1)).toBe(1);
    const controller = new AbortController();
    const opening = documents.open(file, () => controller.abort(), controller.signal);
    expect(await sentence(opening)).toBe('Opening boat.backstay was cancelled.');
  });

  it('never answers a mixture of two versions', async () => {
    writeFileSync(file, 'x'.repeat(2_500_000));
    let changes = 0;
    const onProgress = (): void => {
      if (changes < 2) appendFileSync(file, 'y');
      changes += 1;
    };
    const parts = { ...MACHINE_PARTS, sleep: async () => {} };
    const { bytes } = await readWhole(file, { limit: MAX_DOCUMENT_BYTES, onProgress, parts });
    expect(bytes.toString()).toBe(text());
    const restless = readWhole(file, { limit: MAX_DOCUMENT_BYTES, onProgress: () => appendFileSync(file, 'z'), parts });
    expect(await sentence(restless)).toBe(
      'boat.backstay is being written by another program just now. Open it again when that is done.',
    );
  });

  it('refuses what would never end, what is too large and what is not there', async () => {
    expect(await sentence(documents.open('/dev/zero'))).toBe('zero is not an ordinary file. Choose a .backstay file.');
    expect(await sentence(documents.open(folder))).toContain('it is a folder. Choose a file.');
    expect(await sentence(documents.open(join(folder, 'none')))).toContain('there is no such file or folder');
    truncateSync(file, MAX_DOCUMENT_BYTES + 1_000_000);
    expect(await sentence(documents.open(file))).toContain('is 51 MB; Backstay reads documents up to 50 MB.');
  });

  it.each([
    [[0x61, 0x0a, 0x62, 0x0a, 0xc3, 0x28], /line 3 has a byte that no text has/],
    [[0x61, 0x0a, 0xe2, 0x82], /line 2 has a byte that no text has/],
    [[0xc0, 0x80], /line 1 has a byte/],
    [[0xed, 0xa0, 0x80], /line 1 has a byte/],
    [[0xff, 0xfe, 0x7b, 0x00], /is UTF-16 text; a Backstay document is UTF-8/],
  ])('of bytes %s that are not UTF-8 names the line', (bytes, words) => {
    expect(() => strictText(Uint8Array.from(bytes), '/x/boat.backstay')).toThrow(words);
  });

  it('reads UTF-8 of every length and takes no byte order mark for text', () => {
    const words = 'a é 船 👩‍🔧';
    expect(strictText(new TextEncoder().encode(words), 'x')).toBe(words);
    expect(strictText(new TextEncoder().encode(`\uFEFF${words}`), 'x')).toBe(words);
  });

  it('says of a read-only file that it is one', async () => {
    const { parts } = faultyParts(({ name }) => (name === 'access' ? failsWith('EACCES') : null));
    expect((await new DocumentTable(parts).open(file)).notes).toEqual([
      'boat.backstay is read-only: save changes under another name, with Save as.',
    ]);
  });

  it('waits a moment for a file that a scanner holds', async () => {
    let held = 2;
    const { parts } = faultyParts(({ name }) => {
      if (name !== 'open' || held === 0) return null;
      held -= 1;
      return failsWith('EBUSY');
    });
    expect((await new DocumentTable(parts).open(file)).text).toBe('first');
    held = 9;
    expect(await sentence(new DocumentTable(parts).open(file))).toBe(
      'boat.backstay could not be opened: another program is holding it. Close it there and repeat.',
    );
  });

  it.each([0, 4096])('a file of %d zeros, as a power cut leaves, points to the version before', async (zeros) => {
    writeFileSync(file, Buffer.alloc(zeros));
    expect((await documents.open(file)).notes).toEqual([
      'boat.backstay holds nothing, as a power cut can leave a file another program was writing. Open a backup.',
    ]);
    writeFileSync(`${file}~`, 'before');
    expect((await documents.open(file)).notes[0]).toContain('is beside it as boat.backstay~: copy it to a name');
  });
});

describe('a file that cannot be read as a document', () => {
  it('is set aside byte for byte, never over another, and stays where it is', async () => {
    writeFileSync(file, 'not a boat');
    const parts = { ...MACHINE_PARTS, now: () => Date.UTC(2026, 10, 26) };
    const table = new DocumentTable(parts);
    const { handle } = await table.open(file);
    expect(await table.setAside(handle)).toEqual({ name: 'boat.backstay.unreadable-2026-11-26' });
    writeFileSync(file, 'other');
    expect(await table.setAside(handle)).toEqual({ name: 'boat.backstay.unreadable-2026-11-26-2' });
    expect(readdirSync(folder).map((name) => text(join(folder, name)))).toEqual(['other', 'not a boat', 'other']);
    expect(await sentence(table.setAside('forged'))).toContain('has no file');
  });
});
