import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bundleChild, openFolder } from './bundle.ts';
import { textOf } from './savedTexts.ts';

// Disks that refuse, for real: a small one filled to the brim, a limit on the size of files, a folder and a drive that
// cannot be written. tests/unit/node/writeWhole.test.ts adds every failure the system can give at every step.

const ROUNDS = 150;
const isRoot = process.getuid?.() === 0;
const folder = openFolder('full');
const file = join(folder, 'boat.backstay');
let child = '';

beforeAll(async () => {
  child = await bundleChild();
});
afterAll(() => {
  for (const path of [folder, dirname(child)]) rmSync(path, { recursive: true, force: true });
});
beforeEach(() => {
  chmodSync(folder, 0o755);
  for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
  writeFileSync(file, textOf(0));
});

/** Runs shell lines in mounts of their own, so that nothing stays mounted whatever happens; null where one may not. */
function inOwnMounts(lines: string): string | null {
  const rights = isRoot ? [] : ['--user', '--map-root-user'];
  const { status, stdout } = spawnSync('unshare', [...rights, '--mount', 'sh', '-ec', lines], { encoding: 'utf8' });
  return status === 0 ? stdout : null;
}

const mountSmall = (size: string): string => `mount -t tmpfs -o size=${size} none '${folder}'`;
const canMount = inOwnMounts(mountSmall('1m')) !== null;

const IS_OUT = /^boat\.backstay could not be written: .+\. Your work is still open here\. .+\.$/;

describe('a disk filled to the brim', () => {
  it.skipIf(!canMount)('holds the old or the new document, whole, with a sentence (needs the right to mount)', () => {
    const said = inOwnMounts(
      `${mountSmall('1500k')}; '${process.execPath}' '${child}' fill-disk '${folder}' ${ROUNDS}`,
    );
    const rounds = (said ?? '')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(rounds).toHaveLength(ROUNDS);
    const failed = rounds.filter(({ save }) => save !== 'saved');
    for (const round of rounds) expect(round).toMatchObject({ isRight: true, copy: true, litter: 0 });
    for (const { save } of failed) {
      expect(save).toMatch(IS_OUT);
      expect(save).toContain('the disk is full. Your work is still open here. Make room on it, or use Save as');
    }
    const notKept = rounds.filter(({ keep }) => keep !== 'kept');
    for (const { keep } of notKept) {
      expect(keep).toBe(
        'No recovery copy of Full could be kept: the disk is full. ' +
          'Your work is still open here. Save it now, to another disk if need be.',
      );
    }
    // Both outcomes of both have been seen many times.
    for (const outcomes of [failed, notKept]) {
      expect(outcomes.length).toBeGreaterThan(10);
      expect(outcomes.length).toBeLessThan(ROUNDS - 10);
    }
  });

  it.skipIf(!canMount)('and a drive that has become read-only says so (needs the right to mount)', () => {
    const run = `'${process.execPath}' '${child}' save-once '${folder}' 5`;
    const prepare = `cp '${file}' '${child}.boat'; ${mountSmall('2m')}; cp '${child}.boat' '${file}'`;
    const said = inOwnMounts(`${prepare}; mount -o remount,bind,ro '${folder}'; ${run}; cmp '${child}.boat' '${file}'`);
    expect(JSON.parse(said ?? '')).toEqual({
      save:
        'boat.backstay could not be written: the drive is read-only. Your work is still open here. ' +
        'Use Save as and choose another folder.',
      keep:
        'No recovery copy of Full could be kept: the drive is read-only. ' +
        'Your work is still open here. Save it now, to another disk if need be.',
    });
  });
});

describe('a limit on the size of files', () => {
  // 10 blocks are 5 or 10 kB by the shell's own measure: less than any of the documents.
  it.each([1, 3, 10])('of %d blocks leaves the old document whole, with a sentence', (blocks) => {
    const script = `ulimit -f ${blocks}; exec '${process.execPath}' '${child}' save-once '${folder}' 5`;
    const { stdout } = spawnSync('sh', ['-ec', script], { encoding: 'utf8' });
    const { save, keep } = JSON.parse(stdout) as Record<string, string>;
    expect(save).toMatch(IS_OUT);
    expect(save).toContain('it is larger than this disk or account allows');
    expect(keep).toContain('No recovery copy of Full could be kept: it is larger than');
    expect(readFileSync(file, 'utf8')).toBe(textOf(0));
    expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
    expect(readdirSync(join(folder, 'recovery'))).toEqual([]);
  });
});

describe('a folder that may not be written', () => {
  const asAnother = isRoot ? { uid: 65_534, gid: 65_534 } : {};
  const saveOnce = (): Record<string, string> => {
    const { stdout, stderr } = spawnSync(process.execPath, [child, 'save-once', folder, '5'], {
      encoding: 'utf8',
      ...asAnother,
    });
    if (stdout === '') throw new Error(stderr);
    return JSON.parse(stdout) as Record<string, string>;
  };

  it('leaves the old document whole, with a sentence for file and recovery copy', () => {
    chmodSync(file, 0o666);
    chmodSync(folder, 0o555);
    const { save, keep } = saveOnce();
    expect(save).toBe(
      'boat.backstay could not be written: permission was refused. Your work is still open here. ' +
        'Check who may write there, or choose another folder.',
    );
    expect(keep).toContain('No recovery copy of Full could be kept: permission was refused. Your work is still open');
    expect(readFileSync(file, 'utf8')).toBe(textOf(0));
  });

  it('and a file marked read-only is not replaced although its folder may be written', () => {
    mkdirSync(join(folder, 'recovery'));
    for (const path of [folder, join(folder, 'recovery')]) chmodSync(path, 0o777);
    chmodSync(file, 0o444);
    const { save, keep } = saveOnce();
    expect(save).toContain('permission was refused');
    expect(keep).toBe('');
    expect(readFileSync(file, 'utf8')).toBe(textOf(0));
  });
});
