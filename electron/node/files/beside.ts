import { constants } from 'node:fs';
import { lstat, mkdir, open } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { PICTURE_BYTES, PICTURE_FILE_NAME } from '../../../core/model/picture.ts';
import { shownName } from './names.ts';
import { codeOf, FileProblem, problemWith } from './reasons.ts';
import { writeWhole } from './writeWhole.ts';

const IN_IT = 'Let them travel in the document.';

/** The folder of a document's pictures: `ketch.backstay` has `ketch.pictures`. */
export const besideFolder = (documentPath: string): string =>
  join(dirname(documentPath), `${basename(documentPath, extname(documentPath))}.pictures`);

/**
 * Reads a picture beside a document. Null where there is none, where it or its folder is a link or anything else that is
 * not plain, since that could lead anywhere, and where it is larger than a picture may be.
 */
export async function readBeside(documentPath: string, fileName: string): Promise<Uint8Array<ArrayBuffer> | null> {
  requireSafe(fileName);
  const folder = besideFolder(documentPath);
  if ((await kindOf(folder)) !== 'folder' || (await kindOf(join(folder, fileName))) !== 'file') return null;
  // The same once more as it is opened: no link is followed, and a pipe put there meanwhile is not waited for.
  const flags = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);
  const file = await open(join(folder, fileName), flags).catch(() => null);
  if (!file) return null;
  try {
    const stat = await file.stat();
    if (!stat.isFile() || stat.size > PICTURE_BYTES) return null;
    return new Uint8Array(await file.readFile());
  } finally {
    await file.close();
  }
}

/**
 * Keeps a picture beside a document, whole or not at all. One that is there already with the same content is left as it is;
 * one with another content stays beside it as `name~`.
 * @throws FileProblem whose message is sentences for the user
 */
export async function keepBeside(documentPath: string, fileName: string, bytes: Uint8Array): Promise<void> {
  requireSafe(fileName);
  const known = await readBeside(documentPath, fileName);
  if (known && Buffer.compare(known, bytes) === 0) return;
  const folder = besideFolder(documentPath);
  await mkdir(folder).catch((error: unknown) => {
    if (codeOf(error) !== 'EEXIST') throw problemWith(folder, 'could not be made for the pictures', error, IN_IT);
  });
  if ((await kindOf(folder)) !== 'folder') {
    throw new FileProblem(`${shownName(basename(folder))} beside the document is no folder of its own. ${IN_IT}`);
  }
  const target = join(folder, fileName);
  const kind = await kindOf(target);
  if (kind === 'link') throw new FileProblem(`${fileName} beside the document is a link; take it away first.`);
  if (kind === 'other' || kind === 'folder') {
    throw new FileProblem(`${fileName} beside the document is not an ordinary file; take it away first.`);
  }
  await writeWhole(target, bytes, { keepPrevious: true });
}

/** What there is under a path itself, without following it if it is a link. */
async function kindOf(path: string): Promise<'none' | 'file' | 'folder' | 'link' | 'other'> {
  const stat = await lstat(path).catch(() => null);
  if (stat === null) return 'none';
  if (stat.isSymbolicLink()) return 'link';
  if (stat.isDirectory()) return 'folder';
  return stat.isFile() ? 'file' : 'other';
}

function requireSafe(fileName: string): void {
  if (!PICTURE_FILE_NAME.test(fileName)) throw new FileProblem('That is no name of a picture beside a document.');
}
