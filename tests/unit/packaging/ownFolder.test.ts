import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { emptyOwnFolder } from '../../../packaging/ownFolder.ts';

const work = mkdtempSync(join(tmpdir(), 'backstay-own-folder-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('the folder to pack into', () => {
  it('is made, and emptied the next time', async () => {
    const folder = join(work, 'new/out');
    await emptyOwnFolder(folder);
    writeFileSync(join(folder, 'old'), '');
    await emptyOwnFolder(folder);
    expect(readdirSync(folder)).toEqual(['.made-by-packing']);
  });

  it('may be an empty one', async () => {
    const folder = join(work, 'empty');
    mkdirSync(folder);
    await emptyOwnFolder(folder);
    expect(readdirSync(folder)).toEqual(['.made-by-packing']);
  });

  it('is never one that holds anything else', async () => {
    const folder = join(work, 'mine');
    mkdirSync(folder);
    writeFileSync(join(folder, 'letter.txt'), 'kept');
    await expect(emptyOwnFolder(folder)).rejects.toThrow('holds files that packing did not make');
    expect(readdirSync(folder)).toEqual(['letter.txt']);
  });
});
