import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { previousName, temporaryName } from '../../../electron/node/files/names.ts';
import { MACHINE_PARTS } from '../../../electron/node/files/parts.ts';
import { RENAME_PAUSES_MS, writeWhole } from '../../../electron/node/files/writeWhole.ts';
import { failsWith, faultyParts } from '../../files/faultyParts.ts';

let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'backstay-write-'));
  file = join(folder, 'boat.backstay');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const text = (path: string): string => readFileSync(path, 'utf8');
const litter = (): string[] => readdirSync(folder).filter((name) => name.endsWith('.tmp'));
const sentence = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => '',
    (error: Error) => error.message,
  );

describe('writing a file whole', () => {
  it('flushes the file before it takes the name, and the folder after: nothing is left to the cache', async () => {
    writeFileSync(file, 'old');
    const { parts, steps } = faultyParts(() => null);
    await writeWhole(file, bytes('new'), { keepPrevious: true, parts });
    const shown = steps.filter((name) => ['open', 'writeFile', 'sync', 'close', 'link', 'rename'].includes(name));
    // Temporary written and flushed; version before linked and named; renamed; folder flushed.
    expect(shown.join(' ')).toBe('open writeFile sync close link rename rename open sync close');
  });

  it('keeps the version before, and only that, beside the file', async () => {
    for (const version of ['one', 'two', 'three']) await writeWhole(file, bytes(version), { keepPrevious: true });
    expect([text(file), text(`${file}~`)]).toEqual(['three', 'two']);
    expect(readdirSync(folder)).toHaveLength(2);
    await writeWhole(file, bytes('four'));
    expect([text(file), text(`${file}~`)]).toEqual(['four', 'two']);
  });

  it('keeps it as a flushed copy where the disk has no hard links', async () => {
    writeFileSync(file, 'old');
    const { parts, steps } = faultyParts(({ name }) => (name === 'link' ? failsWith('EPERM') : null));
    expect((await writeWhole(file, bytes('new'), { keepPrevious: true, parts })).notes).toEqual([]);
    expect([text(file), text(`${file}~`)]).toEqual(['new', 'old']);
    expect(steps.join(' ')).toContain('link copyFile open sync close rename');
    expect(litter()).toEqual([]);
  });

  it('keeps it although both names stood for one file after a crash', async () => {
    writeFileSync(file, 'old');
    await MACHINE_PARTS.fs.link(file, `${file}~`);
    await writeWhole(file, bytes('new'), { keepPrevious: true });
    expect([text(file), text(`${file}~`)]).toEqual(['new', 'old']);
    expect(litter()).toEqual([]);
  });

  it('saves with a note where the version before cannot be kept', async () => {
    writeFileSync(file, 'old');
    mkdirSync(`${file}~`);
    const { notes } = await writeWhole(file, bytes('new'), { keepPrevious: true });
    expect(text(file)).toBe('new');
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatch(/^boat\.backstay was saved, but the version before it could not be kept: /);
    expect(litter()).toEqual([]);
  });

  it('saves with a note on a drive that knows no flushing', async () => {
    const { parts } = faultyParts(({ name }) => (name === 'sync' ? failsWith('ENOTSUP') : null));
    expect((await writeWhole(file, bytes('new'), { parts })).notes).toEqual([
      'boat.backstay was saved, but its drive cannot say when it is on the disk.',
    ]);
    expect(text(file)).toBe('new');
  });

  it('keeps the permissions of the file there was', async () => {
    for (const mode of [0o600, 0o640, 0o664, 0o755]) {
      writeFileSync(file, 'old');
      chmodSync(file, mode);
      await writeWhole(file, bytes('new'));
      expect(statSync(file).mode & 0o7777).toBe(mode);
    }
  });

  it('writes through links, also to a file that is not there yet, and leaves them links', async () => {
    const real = join(folder, 'real.backstay');
    symlinkSync('real.backstay', file);
    symlinkSync(file, join(folder, 'second.backstay'));
    for (const version of ['one', 'two']) {
      await writeWhole(join(folder, 'second.backstay'), bytes(version), { keepPrevious: true });
    }
    expect(lstatSync(file).isSymbolicLink()).toBe(true);
    expect(readlinkSync(file)).toBe('real.backstay');
    expect([text(real), text(`${real}~`)]).toEqual(['two', 'one']);
    symlinkSync('circle', join(folder, 'circle'));
    expect(await sentence(writeWhole(join(folder, 'circle'), bytes('x')))).toContain('its links lead in a circle');
  });

  it.each(['⛵ Möwe 船.backstay', 'a'.repeat(255), '船'.repeat(85), ' .backstay', "it's $(x) `y`.backstay"])(
    'takes the name %s',
    async (name) => {
      const path = join(folder, name);
      for (const version of ['one', 'two']) await writeWhole(path, bytes(version), { keepPrevious: true });
      expect(text(path)).toBe('two');
      expect(text(join(folder, previousName(name)))).toBe('one');
    },
  );

  it('refuses a folder, a pipe, a longer name and a folder that is gone, each with a sentence', async () => {
    mkdirSync(file);
    expect(await sentence(writeWhole(file, bytes('x')))).toContain(
      'boat.backstay could not be written: it is a folder',
    );
    expect(await sentence(writeWhole('/dev/null', bytes('x')))).toBe(
      'null is not an ordinary file. Choose another name.',
    );
    expect(await sentence(writeWhole(join(folder, 'a'.repeat(256)), bytes('x')))).toContain('the name is too long');
    expect(await sentence(writeWhole(join(folder, 'gone', 'x'), bytes('x')))).toBe(
      'x could not be written: there is no such file or folder. Your work is still open here. ' +
        'If it is on a removable or network drive, connect that again.',
    );
  });
});

describe('a file that a scanner holds', () => {
  const heldFor = (tries: number, code: string): { parts: typeof MACHINE_PARTS; pauses: number[] } => {
    const pauses: number[] = [];
    let left = tries;
    const fault = ({ name }: { name: string }) => {
      if (name !== 'rename' || left === 0) return null;
      left -= 1;
      return failsWith(code);
    };
    const { parts } = faultyParts(fault);
    return { parts: { ...parts, sleep: async (ms) => void pauses.push(ms) }, pauses };
  };

  it.each(['EBUSY', 'EPERM', 'EACCES'])('is tried again for about two seconds (%s)', async (code) => {
    writeFileSync(file, 'old');
    const { parts, pauses } = heldFor(9, code);
    await writeWhole(file, bytes('new'), { parts });
    expect(text(file)).toBe('new');
    expect(pauses).toEqual(RENAME_PAUSES_MS);
    expect(pauses.reduce((sum, ms) => sum + ms)).toBe(2000);
  });

  it('for longer stays as it was, with a sentence and no litter', async () => {
    writeFileSync(file, 'old');
    const { parts, pauses } = heldFor(Number.POSITIVE_INFINITY, 'EBUSY');
    expect(await sentence(writeWhole(file, bytes('new'), { parts }))).toBe(
      'boat.backstay could not be written: another program is holding it. Your work is still open here. ' +
        'Close it there and repeat.',
    );
    expect(text(file)).toBe('old');
    expect(pauses).toHaveLength(RENAME_PAUSES_MS.length);
    expect(litter()).toEqual([]);
  });

  it('is not tried again for what will not pass', async () => {
    const { parts, pauses } = heldFor(1, 'EXDEV');
    expect(await sentence(writeWhole(file, bytes('new'), { parts }))).toContain('lie on different drives');
    expect(pauses).toEqual([]);
  });
});

describe('any failure at any step', () => {
  const codes = ['ENOSPC', 'EDQUOT', 'EIO', 'EROFS', 'EACCES', 'ENOENT', 'EBUSY'];

  it.each(codes)('%s leaves the old file with a sentence, or the new one', async (code) => {
    let number = 0;
    const outcomes = new Set<string>();
    for (let isDone = false; !isDone; ) {
      number += 1;
      writeFileSync(file, 'old content');
      const { parts, steps } = faultyParts((step) => (step.number === number ? failsWith(code) : null));
      const said = await sentence(writeWhole(file, bytes('new content'), { keepPrevious: true, parts }));
      const at = `${code} at step ${number}, ${steps[number - 1]}`;
      expect(text(file), at).toBe(said === '' ? 'new content' : 'old content');
      if (said !== '')
        expect(said, at).toMatch(/^boat\.backstay could not be written: .*\. Your work is still open here\./);
      if (existsSync(`${file}~`)) expect(text(`${file}~`), at).toMatch(/^(old|new) content$/);
      expect(litter().length, at).toBeLessThanOrEqual(steps[number - 1] === 'rm' ? 1 : 0);
      outcomes.add(said === '' ? 'new' : 'old');
      isDone = steps.length < number;
    }
    expect(number).toBeGreaterThan(15);
    expect(outcomes).toEqual(new Set(['new', 'old']));
  });
});

describe('what a crash leaves', () => {
  const DEAD_PID = 4_194_305;
  const own = (): string => temporaryName(basename(file));

  it('is swept at the next save of the same file; nothing else is', async () => {
    const dead = own().replace(`-${process.pid}-`, `-${DEAD_PID}-`);
    const alive = own().replace(`-${process.pid}-`, `-${process.ppid}-`);
    const ofOther = temporaryName('other.backstay').replace(`-${process.pid}-`, `-${DEAD_PID}-`);
    const notOurs = ['.boat.backstay.swp', 'boat.backstay.tmp', '.backstay-notes.tmp'];
    for (const name of [dead, alive, ofOther, own(), ...notOurs]) writeFileSync(join(folder, name), 'half');
    await writeWhole(file, bytes('new'));
    expect(readdirSync(folder).sort()).toEqual(['boat.backstay', alive, ofOther, ...notOurs].sort());
  });

  it('of another machine is swept a day later, when no save can still be going on', async () => {
    const machine = /-([0-9a-f]{8})-\d+-/.exec(own())?.[1] ?? hostname();
    const [young, old] = [own(), own()].map((name) => join(folder, name.replace(machine, 'ffffffff')));
    for (const path of [young, old]) writeFileSync(path ?? '', 'half');
    const day = 24 * 60 * 60;
    utimesSync(old ?? '', Date.now() / 1000 - day - 60, Date.now() / 1000 - day - 60);
    await writeWhole(file, bytes('new'));
    expect(readdirSync(folder).sort()).toEqual(['boat.backstay', basename(young ?? '')].sort());
  });

  it('two saves of one file at a time do not sweep each other', async () => {
    await Promise.all(['a', 'b', 'c', 'd'].map((letter) => writeWhole(file, bytes(letter.repeat(100_000)))));
    expect(text(file)).toMatch(/^(a+|b+|c+|d+)$/);
    expect(text(file)).toHaveLength(100_000);
    expect(litter()).toEqual([]);
  });
});
