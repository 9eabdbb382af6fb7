import { basename, dirname, join } from 'node:path';
import { temporaryMark } from './names.ts';
import type { FileParts } from './parts.ts';

/** After this long a temporary of another machine is taken for a leftover, ms. */
const FOREIGN_AGE_MS = 24 * 60 * 60 * 1000;

/** The temporaries of saves that are going on in this process. */
const inUse = new Set<string>();

export function rememberTemporary(path: string): void {
  inUse.add(path);
}

export function forgetTemporary(path: string): void {
  inUse.delete(path);
}

/**
 * Takes away what a crash left of earlier saves of this file: temporaries of processes of this machine that are no more,
 * and those of other machines from yesterday or before. What cannot be seen or removed stays; no save fails over it.
 */
export async function sweepTemporaries(target: string, parts: FileParts): Promise<void> {
  const folder = dirname(target);
  const names = await parts.fs.readdir(folder).catch((): string[] => []);
  for (const name of names) {
    const mark = temporaryMark(name, basename(target));
    if (mark === null) continue;
    const path = join(folder, name);
    const isOver = mark.isOwnMachine ? !isAlive(mark.pid, path) : await isOld(path, parts);
    if (isOver) await parts.fs.rm(path, { force: true }).catch(() => {});
  }
}

function isAlive(pid: number, path: string): boolean {
  if (pid === process.pid) return inUse.has(path);
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: there is such a process, of another user.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

async function isOld(path: string, parts: FileParts): Promise<boolean> {
  try {
    return parts.now() - (await parts.fs.stat(path)).mtimeMs > FOREIGN_AGE_MS;
  } catch {
    return false;
  }
}
