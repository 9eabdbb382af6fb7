import { constants } from 'node:fs';
import { lstat, mkdir, open } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { MAX_PICTURE_BYTES } from '../../contract.ts';
import { writeWhole } from './writeWhole.ts';

/** Names that can be kept beside a document: no path can be written with these letters. */
const SAFE_NAME = /^[A-Za-z0-9-]{1,64}\.(png|jpg)$/;

/** The folder of a document's pictures: `ketch.backstay` has `ketch.pictures`. */
export const besideFolder = (documentPath: string): string =>
  join(dirname(documentPath), `${basename(documentPath, extname(documentPath))}.pictures`);

/** Reads a picture beside a document, or null where there is none, or none of a size that is believed. */
export async function readBeside(documentPath: string, fileName: string): Promise<Uint8Array<ArrayBuffer> | null> {
  requireSafe(fileName);
  // A link there could lead anywhere, so none is followed.
  const flags = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0);
  const file = await open(join(besideFolder(documentPath), fileName), flags).catch(() => null);
  if (!file) return null;
  try {
    const stat = await file.stat();
    if (!stat.isFile() || stat.size > MAX_PICTURE_BYTES) return null;
    return new Uint8Array(await file.readFile());
  } finally {
    await file.close();
  }
}

/** Keeps a picture beside a document, whole or not at all; one that is there already is left as it is. */
export async function keepBeside(documentPath: string, fileName: string, bytes: Uint8Array): Promise<void> {
  requireSafe(fileName);
  const known = await readBeside(documentPath, fileName);
  if (known && Buffer.compare(known, bytes) === 0) return;
  const folder = besideFolder(documentPath);
  await mkdir(folder, { recursive: true }).catch((error: unknown) => {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(
      `The folder ${basename(folder)} could not be made for the pictures: ${why}. Let them travel in the document.`,
    );
  });
  const target = join(folder, fileName);
  const link = await lstat(target).catch(() => null);
  if (link?.isSymbolicLink()) throw new Error(`${fileName} beside the document is a link; take it away first.`);
  await writeWhole(target, bytes);
}

function requireSafe(fileName: string): void {
  if (!SAFE_NAME.test(fileName)) throw new Error('That is no name of a picture beside a document.');
}
