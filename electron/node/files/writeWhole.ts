import { constants, type Stats } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { previousName, shownName, temporaryName } from './names.ts';
import { type FileParts, MACHINE_PARTS } from './parts.ts';
import { codeOf, FileProblem, problemWith } from './reasons.ts';
import { forgetTemporary, rememberTemporary, sweepTemporaries } from './temporaries.ts';

export interface WriteOptions {
  /** Keeps the version there was as `name~` beside the file. */
  readonly keepPrevious?: boolean;
  readonly parts?: FileParts;
}

export interface Written {
  /** The file's time of change as the system has it now, ms since 1970. */
  readonly mtimeMs: number;
  /** Sentences for the user on what did not go as promised although the file is written. */
  readonly notes: readonly string[];
}

/** Pauses between the tries of a rename, ms: ten tries in 2 s, which outlasts a virus scanner's look. */
export const RENAME_PAUSES_MS: readonly number[] = [10, 20, 40, 80, 150, 250, 350, 450, 650];

/** What a scanner, an indexer or a file-sharing program causes while it holds a file (Windows above all). */
const HELD = ['EBUSY', 'EPERM', 'EACCES'];

/** What drives answer that know no flushing (some network shares and phones). */
const NO_FLUSH = ['EINVAL', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'];

/** What systems answer besides that do not let a folder be opened or flushed (Windows above all). */
const NO_FOLDER_FLUSH = [...NO_FLUSH, 'EISDIR', 'EPERM', 'EACCES', 'EBADF'];

/**
 * Writes a file so that a crash or a power cut at any moment leaves the old or the new one, whole, under its name: a
 * temporary of its own in the same folder, flushed to the disk, renamed over the old, then the folder flushed. A link is
 * followed and stays a link; the permissions of the old file are kept. docs/files.md says how each promise is tested.
 * @throws FileProblem whose message is sentences for the user; the old file is then untouched
 */
export async function writeWhole(path: string, bytes: Uint8Array, options: WriteOptions = {}): Promise<Written> {
  const parts = options.parts ?? MACHINE_PARTS;
  try {
    const target = await followLinks(path, parts);
    const former = await formerFile(target, parts);
    await sweepTemporaries(target, parts);
    return await replace(target, bytes, former, options.keepPrevious ?? false, parts);
  } catch (error) {
    throw problemWith(path, 'could not be written', error, 'Your work is still open here.');
  }
}

async function replace(
  target: string,
  bytes: Uint8Array,
  former: Stats | null,
  keepsPrevious: boolean,
  parts: FileParts,
): Promise<Written> {
  const temporary = join(dirname(target), temporaryName(basename(target)));
  rememberTemporary(temporary);
  try {
    const { mtimeMs, isFlushed } = await writeFlushed(temporary, bytes, former, parts);
    const notes = keepsPrevious && former !== null ? await keepPrevious(target, parts) : [];
    await renameHeld(temporary, target, parts);
    if (!isFlushed)
      notes.push(`${shownName(basename(target))} was saved, but its drive cannot say when it is on the disk.`);
    return { mtimeMs, notes: [...notes, ...(await flushFolder(target, parts))] };
  } catch (error) {
    await parts.fs.rm(temporary, { force: true }).catch(() => {});
    throw error;
  } finally {
    forgetTemporary(temporary);
  }
}

/** The file a path means in the end, there or not yet: links are written through to their target. */
async function followLinks(path: string, parts: FileParts, depth = 0): Promise<string> {
  try {
    return await parts.fs.realpath(path);
  } catch (error) {
    if (codeOf(error) !== 'ENOENT' || depth > 40) throw error;
  }
  const linked = await parts.fs.readlink(path).catch(() => null);
  return linked === null ? resolve(path) : followLinks(resolve(dirname(path), linked), parts, depth + 1);
}

/** The file there is under the name, null for none. Refuses what a rename would replace against the user's will. */
async function formerFile(target: string, parts: FileParts): Promise<Stats | null> {
  const former = await parts.fs.stat(target).catch((error: unknown) => {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  });
  if (former === null) return null;
  if (former.isDirectory()) throw Object.assign(new Error('is a folder'), { code: 'EISDIR' });
  if (!former.isFile()) {
    throw new FileProblem(`${shownName(basename(target))} is not an ordinary file. Choose another name.`);
  }
  // Renaming over a file asks the folder's permission, not the file's: a file marked read-only is meant to stay.
  await parts.fs.access(target, constants.W_OK);
  return former;
}

/** Writes the temporary to the disk with the old file's permissions. Answers with its time of change and if it is there. */
async function writeFlushed(
  temporary: string,
  bytes: Uint8Array,
  former: Stats | null,
  parts: FileParts,
): Promise<{ readonly mtimeMs: number; readonly isFlushed: boolean }> {
  const file = await parts.fs.open(temporary, 'wx', former === null ? 0o666 : former.mode & 0o777);
  try {
    await file.writeFile(bytes);
    if (former !== null) {
      // Whoever may not give a file away (nearly everyone) keeps it as his own.
      if (process.platform !== 'win32') await file.chown(former.uid, former.gid).catch(() => {});
      await file.chmod(former.mode & 0o7777).catch(() => {});
    }
    const isFlushed = await file.sync().then(
      () => true,
      (error: unknown) => {
        if (NO_FLUSH.includes(codeOf(error))) return false;
        throw error;
      },
    );
    return { mtimeMs: (await file.stat()).mtimeMs, isFlushed };
  } finally {
    await file.close();
  }
}

/**
 * Gives the version there is its second name, `name~`, in one step: a hard link, where the disk has them, else a flushed
 * copy, renamed over the last one. A version that cannot be kept does not stop the save; that is said.
 */
async function keepPrevious(target: string, parts: FileParts): Promise<string[]> {
  const folder = dirname(target);
  const step = join(folder, temporaryName(basename(target)));
  rememberTemporary(step);
  try {
    await parts.fs.link(target, step).catch(() => copyFlushed(target, step, parts));
    await renameHeld(step, join(folder, previousName(basename(target))), parts);
    return [];
  } catch (error) {
    const { message } = problemWith(target, 'was saved, but the version before it could not be kept', error);
    return [message];
  } finally {
    // Between two names of one file a rename does nothing and leaves both.
    await parts.fs.rm(step, { force: true }).catch(() => {});
    forgetTemporary(step);
  }
}

async function copyFlushed(from: string, to: string, parts: FileParts): Promise<void> {
  await parts.fs.copyFile(from, to, constants.COPYFILE_EXCL);
  const file = await parts.fs.open(to, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

async function renameHeld(from: string, to: string, parts: FileParts): Promise<void> {
  for (const pauseMs of RENAME_PAUSES_MS) {
    try {
      await parts.fs.rename(from, to);
      return;
    } catch (error) {
      if (!HELD.includes(codeOf(error))) throw error;
      await parts.sleep(pauseMs);
    }
  }
  await parts.fs.rename(from, to);
}

/** Flushes the folder, so that the rename itself outlives a power cut. The file is whole either way. */
async function flushFolder(target: string, parts: FileParts): Promise<string[]> {
  try {
    const folder = await parts.fs.open(dirname(target), 'r');
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
    return [];
  } catch (error) {
    if (NO_FOLDER_FLUSH.includes(codeOf(error))) return [];
    const { message } = problemWith(target, 'was saved, but the disk did not confirm it', error);
    return [message];
  }
}
