import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PICTURE_BYTES } from '../../../core/model/picture.ts';
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
  });

  it('are never lost to another of the same name: it stays beside as the version before', async () => {
    await keepBeside(document, 'picture-1.png', bytes);
    expect(readdirSync(join(folder, 'ketch.pictures'))).toEqual(['picture-1.png']);
    await keepBeside(document, 'picture-1.png', new Uint8Array([4]));
    expect(await readBeside(document, 'picture-1.png')).toEqual(new Uint8Array([4]));
    expect(new Uint8Array(readFileSync(join(folder, 'ketch.pictures', 'picture-1.png~')))).toEqual(bytes);
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
    writeFileSync(join(folder, 'ketch.pictures', 'picture-8.png'), new Uint8Array(PICTURE_BYTES + 1));
    expect(await readBeside(document, 'picture-8.png')).toBeNull();
  });

  it('lie in no folder that is a link', async () => {
    const elsewhere = join(folder, 'elsewhere');
    mkdirSync(elsewhere);
    writeFileSync(join(elsewhere, 'picture-1.png'), 'theirs');
    symlinkSync(elsewhere, join(folder, 'linked.pictures'));
    const linked = join(folder, 'linked.backstay');
    expect(await readBeside(linked, 'picture-1.png')).toBeNull();
    for (const name of ['picture-1.png', 'picture-2.png']) {
      await expect(keepBeside(linked, name, bytes)).rejects.toThrow(
        /^linked\.pictures beside the document is no folder of its own\. Let them travel in the document\.$/,
      );
    }
    expect(readdirSync(elsewhere)).toEqual(['picture-1.png']);
    expect(readFileSync(join(elsewhere, 'picture-1.png'), 'utf8')).toBe('theirs');
  });

  const hasPipes = spawnSync('mkfifo', ['--version']).status === 0;

  it.runIf(hasPipes)('are not waited for where a pipe or a folder lies under their name', async () => {
    execFileSync('mkfifo', [join(folder, 'ketch.pictures', 'pipe.png')]);
    mkdirSync(join(folder, 'ketch.pictures', 'folder.png'));
    for (const name of ['pipe.png', 'folder.png']) {
      expect(await readBeside(document, name)).toBeNull();
      await expect(keepBeside(document, name, bytes)).rejects.toThrow(/is not an ordinary file; take it away first/);
    }
  });

  it('says so where the folder cannot be made', async () => {
    const gone = join(folder, 'no-such-folder', 'ketch.backstay');
    const message = await keepBeside(gone, 'picture-1.png', bytes).then(
      () => '',
      (error: Error) => error.message,
    );
    expect(message).toMatch(/^ketch\.pictures could not be made for the pictures: there is no such file or folder\./);
    expect(message).toContain('Let them travel in the document.');
    expect(message).not.toContain(folder);
    const blocked = join(folder, 'blocked.backstay');
    writeFileSync(join(folder, 'blocked.pictures'), 'a file of that name');
    await expect(keepBeside(blocked, 'picture-1.png', bytes)).rejects.toThrow(/Let them travel in the document/);
    rmSync(folder, { recursive: true, force: true });
  });
});
