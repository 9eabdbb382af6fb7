import { existsSync } from 'node:fs';
import { mkdir, readdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Lies in every folder that packing has made, so that no other is ever emptied. */
const MARK = '.made-by-packing';

/**
 * Makes a folder ready to pack into: new, or emptied if packing made it before.
 * @throws Error when it holds something else
 */
export async function emptyOwnFolder(folder: string): Promise<void> {
  const isOthers = existsSync(folder) && !existsSync(join(folder, MARK)) && (await readdir(folder)).length > 0;
  if (isOthers)
    throw new Error(`${folder} holds files that packing did not make: name a new or an empty folder with --out.`);
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, MARK), '');
}
