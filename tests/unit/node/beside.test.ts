import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MAX_PICTURE_BYTES } from '../../../electron/contract.ts';
import { besideFolder, keepBeside, readBeside } from '../../../electron/node/files/beside.ts';

const folder = mkdtempSync(join(tmpdir(), 'backstay-beside-'));
const document = join(folder, 'ketch.backstay');
const bytes = new Uint8Array([1, 2, 3]);

describe('pictures beside a document', () => {
  it('are kept in a folder named after it, and read back', async () => {
    await keepBeside(document, 'picture-1.png', bytes);
    expect(besideFolder(document)).toBe(join(folder, 'ketch.pictures'));
    expect(readdirSync(join(folder, 'ketch.pictures'))).toEqual(['picture-1.png']);
    expect(await readBeside(document, 'picture-1.png')).toEqual(bytes);
    expect(await readBeside(document, 'picture-2.png')).toBeNull();
    await keepBeside(document, 'picture-1.png', new Uint8Array([4]));
    expect(await readBeside(document, 'picture-1.png')).toEqual(new Uint8Array([4]));
  });

  it.each(['../ketch.backstay', '/etc/passwd', 'a/b.png', 'a.svg', '', 'x'.repeat(65), '..png', 'a\0.png'])(
    'refuses the name %j',
    async (name) => {
      await expect(readBeside(document, name)).rejects.toThrow(/no name of a picture/);
      await expect(keepBeside(document, name, bytes)).rejects.toThrow(/no name of a picture/);
    },
  );

  it('follows no link, and believes no file too large', async () => {
    const secret = join(folder, 'secret.txt');
    writeFileSync(secret, 'secret');
    symlinkSync(secret, join(folder, 'ketch.pictures', 'picture-7.png'));
    expect(await readBeside(document, 'picture-7.png')).toBeNull();
    await expect(keepBeside(document, 'picture-7.png', bytes)).rejects.toThrow(/is a link/);
    expect(readFileSync(secret, 'utf8')).toBe('secret');
    writeFileSync(join(folder, 'ketch.pictures', 'picture-8.png'), new Uint8Array(MAX_PICTURE_BYTES + 1));
    expect(await readBeside(document, 'picture-8.png')).toBeNull();
  });

  it('says so where the folder cannot be made', async () => {
    const blocked = join(folder, 'blocked.backstay');
    writeFileSync(join(folder, 'blocked.pictures'), 'a file of that name');
    await expect(keepBeside(blocked, 'picture-1.png', bytes)).rejects.toThrow(/Let them travel in the document/);
    rmSync(folder, { recursive: true, force: true });
  });
});
