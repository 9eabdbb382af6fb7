import { randomUUID } from 'node:crypto';
import { constants } from 'node:fs';
import { copyFile, readFile, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { RecentFile } from '../contract.ts';
import { ensureFolder } from './files/ensureFolder.ts';
import { shownName, unreadableName } from './files/names.ts';
import { OneAtATime } from './files/oneAtATime.ts';
import { type FileParts, MACHINE_PARTS } from './files/parts.ts';
import { writeWhole } from './files/writeWhole.ts';

/** Most files remembered. */
export const MAX_RECENT = 12;

/** How long a drive may take to say whether a file is there before it counts as missing, ms. */
const PATIENCE_MS = 500;

interface Used {
  readonly id: string;
  readonly path: string;
  /** ISO 8601. */
  readonly lastUsed: string;
}

/**
 * The files used last, the latest first, by opaque id. The list is a convenience: a list file that is damaged is set
 * aside and begun anew, and one that cannot be written is remembered until the program ends.
 */
export class RecentFiles {
  readonly #file: string;
  readonly #parts: FileParts;
  readonly #working = new OneAtATime();
  /** What could not be written to the list file. */
  #unwritten: readonly Used[] | null = null;

  constructor(file: string, parts: FileParts = MACHINE_PARTS) {
    this.#file = file;
    this.#parts = parts;
  }

  /** Puts a file at the head of the list; its id stays the same as long as it is in it. */
  async add(path: string): Promise<void> {
    await this.#change((files) => {
      const whole = resolve(path);
      const isSame = (used: Used): boolean => sameFile(used.path, whole);
      const id = files.find(isSame)?.id ?? randomUUID();
      const lastUsed = new Date(this.#parts.now()).toISOString();
      return [{ id, path: whole, lastUsed }, ...files.filter((used) => !isSame(used))].slice(0, MAX_RECENT);
    });
  }

  /** The files, the latest first; `missing` marks one that is not there now, such as one on a drive that is not in. */
  async list(): Promise<RecentFile[]> {
    const files = await this.#working.run('list', () => this.#read());
    return Promise.all(
      files.map(async ({ id, path, lastUsed }) => ({
        id,
        name: shownName(basename(path)),
        folder: shownName(basename(dirname(path))),
        lastUsed,
        missing: !(await isThere(path)),
      })),
    );
  }

  /** The path behind an id, undefined when it is no longer in the list. */
  async pathOf(id: string): Promise<string | undefined> {
    const files = await this.#working.run('list', () => this.#read());
    return files.find((used) => used.id === id)?.path;
  }

  /** Forgets all files; the files themselves stay. */
  async clear(): Promise<void> {
    await this.#change(() => []);
  }

  async #change(change: (files: readonly Used[]) => readonly Used[]): Promise<void> {
    await this.#working.run('list', async () => {
      // Read anew each time: another instance may have added to it.
      const files = change(await this.#read());
      try {
        await ensureFolder(dirname(this.#file));
        const text = `${JSON.stringify({ version: 1, files }, null, 2)}\n`;
        await writeWhole(this.#file, new TextEncoder().encode(text), { parts: this.#parts });
        this.#unwritten = null;
      } catch {
        this.#unwritten = files;
      }
    });
  }

  async #read(): Promise<readonly Used[]> {
    if (this.#unwritten !== null) return this.#unwritten;
    try {
      const files = filesIn(await readFile(this.#file, 'utf8'));
      if (files !== null) return files;
      await this.#setAside();
    } catch {
      // None yet, or one that cannot be read just now: then it is empty.
    }
    return [];
  }

  /** Keeps a damaged list for whoever wants to look at it; a copy of the same day is enough. */
  async #setAside(): Promise<void> {
    const name = unreadableName(basename(this.#file), this.#parts.now(), 1);
    await copyFile(this.#file, join(dirname(this.#file), name), constants.COPYFILE_EXCL).catch(() => {});
  }
}

/** The files in the text of a list; null where it is not one. */
function filesIn(text: string): readonly Used[] | null {
  try {
    const list: unknown = JSON.parse(text);
    if (typeof list !== 'object' || list === null || !('files' in list) || !Array.isArray(list.files)) return null;
    return list.files.every(isUsed) ? list.files.slice(0, MAX_RECENT) : null;
  } catch {
    return null;
  }
}

function isUsed(value: unknown): value is Used {
  if (typeof value !== 'object' || value === null) return false;
  const { id, path, lastUsed } = value as Readonly<Record<string, unknown>>;
  return typeof id === 'string' && typeof path === 'string' && path !== '' && typeof lastUsed === 'string';
}

/** Windows and macOS take names that differ only in capitals for one. */
function sameFile(a: string, b: string): boolean {
  const isBlindToCase = process.platform === 'win32' || process.platform === 'darwin';
  return isBlindToCase ? a.toLowerCase() === b.toLowerCase() : a === b;
}

async function isThere(path: string): Promise<boolean> {
  const found = stat(path).then(
    (stats) => stats.isFile(),
    () => false,
  );
  const patience = new AbortController();
  try {
    return await Promise.race([found, pause(PATIENCE_MS, false, { signal: patience.signal })]);
  } finally {
    patience.abort();
  }
}
