import { readdir, readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { MAX_DOCUMENT_BYTES, type Recovery } from '../../contract.ts';
import { ensureFolder } from '../files/ensureFolder.ts';
import { shownName } from '../files/names.ts';
import { OneAtATime } from '../files/oneAtATime.ts';
import { type FileParts, MACHINE_PARTS } from '../files/parts.ts';
import { codeOf, FileProblem, problemWith, reasonFor } from '../files/reasons.ts';
import { writeWhole } from '../files/writeWhole.ts';
import { type KeptEntry, type RecoveryEntry, readEntry, writeEntry } from './entry.ts';
import { summarise } from './summary.ts';

export type { RecoveryEntry } from './entry.ts';

/**
 * What the folder holds at most. Beyond it the oldest copies go first, never those kept since the program started; a
 * year is long enough for a boat laid up over a winter.
 */
export const RECOVERY_LIMITS = { count: 100, bytes: 1_000_000_000, ageMs: 366 * 24 * 60 * 60 * 1000 } as const;

export interface RecoveryLimits {
  readonly count: number;
  readonly bytes: number;
  readonly ageMs: number;
}

const ENDING = '.recovery';
/** Also keeps an id from being a path, or a name a system keeps for a device. */
const START = 'copy-';
const ID = /^[A-Za-z0-9-]{1,64}$/;

interface KeptFile {
  readonly id: string;
  readonly path: string;
  readonly size: number;
  readonly mtimeMs: number;
}

/**
 * Unsaved work, one file per document in a folder of the program's own, each written whole or not at all. Windows and
 * instances do not tread on each other, because each opening of a document has an id of its own.
 */
export class RecoveryStore {
  readonly #folder: string;
  readonly #parts: FileParts;
  readonly #limits: RecoveryLimits;
  readonly #working = new OneAtATime();
  /** Kept since the program started: work that may be on the screen now. */
  readonly #own = new Set<string>();

  constructor(folder: string, parts: FileParts = MACHINE_PARTS, limits: RecoveryLimits = RECOVERY_LIMITS) {
    this.#folder = folder;
    this.#parts = parts;
    this.#limits = limits;
  }

  /**
   * Keeps the text in place of what was kept for this document before.
   * @throws FileProblem whose message is sentences for the user; what was kept before stays
   */
  async keep(entry: RecoveryEntry): Promise<void> {
    const path = this.#pathOf(entry.documentId);
    await this.#working.run(entry.documentId, async () => {
      const bytes = writeEntry(entry, this.#parts.now());
      if (bytes.length > 2 * MAX_DOCUMENT_BYTES)
        throw new FileProblem('The document is too large to be kept. Save it.');
      try {
        await ensureFolder(this.#folder);
        await writeWhole(path, bytes, { parts: this.#parts });
      } catch (error) {
        throw this.#notKept(entry, error);
      }
      this.#own.add(entry.documentId);
    });
    await this.#prune();
  }

  /** Takes a copy away: its document has been saved or closed on purpose, or the user does not want it. None is no fault. */
  async drop(documentId: string): Promise<void> {
    const path = this.#pathOf(documentId);
    await this.#working.run(documentId, async () => {
      await rm(path, { force: true, maxRetries: 5, retryDelay: 100 }).catch((error: unknown) => {
        throw problemWith(path, 'could not be taken out of the recovery folder', error);
      });
      this.#own.delete(documentId);
    });
  }

  /** Every copy there is, the latest first, each with what can be read of it. Never throws over a damaged one. */
  async list(): Promise<Recovery[]> {
    const listed: Recovery[] = [];
    // One after the other: documents with pictures are large, and only one need be in memory.
    for (const file of await this.#files()) {
      const entry = await this.#listed(file);
      if (entry !== null) listed.push(entry);
    }
    return listed.sort((a, b) => b.keptAt.localeCompare(a.keptAt));
  }

  /**
   * The work in a copy, which stays until it is dropped. A damaged one answers with the text that is left.
   * @throws FileProblem when there is no such copy or it cannot be read at all
   */
  async read(id: string): Promise<KeptEntry> {
    const path = this.#pathOf(id);
    return this.#working.run(id, async () => {
      try {
        return readEntry(await readFile(path));
      } catch (error) {
        if (codeOf(error) === 'ENOENT') throw new FileProblem('This recovery copy is no longer there.', 'ENOENT');
        throw problemWith(path, 'could not be read', error);
      }
    });
  }

  async #listed({ id, path, size, mtimeMs }: KeptFile): Promise<Recovery | null> {
    try {
      const entry = readEntry(await readFile(path));
      const { title, summary } = summarise(entry.text);
      const isMarked = entry.isWhole || summary.startsWith('Damaged') || summary.startsWith('Nothing');
      return {
        id,
        title: shownName(entry.title || title),
        name: entry.name,
        keptAt: new Date(entry.keptAt ?? mtimeMs).toISOString(),
        bytes: size,
        summary: isMarked ? summary : `Damaged in part: ${summary}`,
      };
    } catch (error) {
      // Dropped meanwhile by its own window.
      if (codeOf(error) === 'ENOENT') return null;
      const keptAt = new Date(mtimeMs).toISOString();
      return { id, title: '', name: '', keptAt, bytes: size, summary: 'Damaged: it cannot be read.' };
    }
  }

  async #files(): Promise<KeptFile[]> {
    const names = await readdir(this.#folder).catch((): string[] => []);
    const files: KeptFile[] = [];
    for (const name of names) {
      if (!name.startsWith(START) || !name.endsWith(ENDING)) continue;
      const id = name.slice(START.length, -ENDING.length);
      const path = join(this.#folder, name);
      const stats = await stat(path).catch(() => null);
      if (ID.test(id) && stats?.isFile()) files.push({ id, path, size: stats.size, mtimeMs: stats.mtimeMs });
    }
    return files;
  }

  /** Holds the folder to its limits. A copy that cannot be removed stays; keeping never fails over it. */
  async #prune(): Promise<void> {
    const files = (await this.#files()).sort((a, b) => b.mtimeMs - a.mtimeMs);
    let bytes = 0;
    let count = 0;
    for (const file of files) {
      bytes += file.size;
      count += 1;
      const isOld = this.#parts.now() - file.mtimeMs > this.#limits.ageMs;
      const isOver = isOld || count > this.#limits.count || bytes > this.#limits.bytes;
      if (isOver && !this.#own.has(file.id)) await rm(file.path, { force: true }).catch(() => {});
    }
  }

  #pathOf(id: string): string {
    if (!ID.test(id)) throw new FileProblem('There is no such recovery copy.');
    return join(this.#folder, `${START}${id}${ENDING}`);
  }

  #notKept({ title }: RecoveryEntry, error: unknown): FileProblem {
    const code = codeOf(error);
    const what = `No recovery copy of ${title === '' ? 'this document' : shownName(title)} could be kept`;
    const mend = 'Your work is still open here. Save it now, to another disk if need be.';
    return new FileProblem(`${what}: ${reasonFor(code).what}. ${mend}`, code);
  }
}
