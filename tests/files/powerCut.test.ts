import { describe, expect, it } from 'vitest';
import { writeWhole } from '../../electron/node/files/writeWhole.ts';
import { MemoryDisk } from './memoryDisk.ts';

// The power goes after every step of a save in turn, and with it whatever was not flushed, in every combination that a
// disk may leave: bytes without their file, names before their bytes, changes to the folder in any order. A kill cannot
// show this (crash.test.ts), because the system's cache outlives the process.

const FILE = '/boats/boat.backstay';
const OLD = { 'boat.backstay': 'the old document', 'boat.backstay~': 'the one before' };

/** Everything each name could hold after a power cut at any step of a save; null for a name that was not there. */
async function saved(
  disk: MemoryDisk,
): Promise<{ steps: number; file: Set<string | null>; previous: Set<string | null> }> {
  let steps = 0;
  const file = new Set<string | null>();
  const previous = new Set<string | null>();
  disk.onStep = () => {
    steps += 1;
    for (const outcome of disk.afterPowerCut()) {
      for (const content of outcome.get('boat.backstay') ?? [null]) file.add(content);
      for (const content of outcome.get('boat.backstay~') ?? [null]) previous.add(content);
    }
  };
  await writeWhole(FILE, Buffer.from('the new document'), { keepPrevious: true, parts: disk.parts });
  return { steps, file, previous };
}

describe('a power cut at any step of a save', () => {
  it.each([
    ['with hard links', true],
    ['without hard links', false],
  ])('leaves old or new, whole, on a disk %s', async (_kind, hasLinks) => {
    const disk = new MemoryDisk(OLD, { hasLinks });
    const { steps, file, previous } = await saved(disk);
    expect(steps).toBeGreaterThan(6);
    expect(file).toEqual(new Set(['the old document', 'the new document']));
    expect(previous).toEqual(new Set(['the one before', 'the old document']));
  });

  it('cannot undo a save that has been said to be done', async () => {
    const disk = new MemoryDisk(OLD);
    await writeWhole(FILE, Buffer.from('the new document'), { keepPrevious: true, parts: disk.parts });
    for (const outcome of disk.afterPowerCut()) {
      expect(outcome.get('boat.backstay')).toEqual(['the new document']);
      expect(outcome.get('boat.backstay~')).toEqual(['the old document']);
    }
  });

  it('leaves a first save whole or not there', async () => {
    const { file, previous } = await saved(new MemoryDisk({}));
    expect(file).toEqual(new Set([null, 'the new document']));
    expect(previous).toEqual(new Set([null]));
  });

  it('would leave half and empty documents if nothing were flushed: the control', async () => {
    const { file } = await saved(new MemoryDisk(OLD, { flushes: false }));
    expect(file).toContain('');
    expect(file).toContain('the new ');
    expect(file).toContain('\0'.repeat('the new document'.length));
  });
});
