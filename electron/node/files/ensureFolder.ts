import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { codeOf } from './reasons.ts';

/**
 * Makes a folder of the program's own, for this account only, and those above it where they are missing. Step by step,
 * because Node's own recursive call answers that there is no such folder where the drive is read-only.
 */
export async function ensureFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { mode: 0o700 });
  } catch (error) {
    const code = codeOf(error);
    if (code === 'EEXIST') return;
    if (code !== 'ENOENT' || dirname(folder) === folder) throw error;
    await ensureFolder(dirname(folder));
    await ensureFolder(folder);
  }
}
