import { randomUUID } from 'node:crypto';
import { constants } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { MAX_DOCUMENT_BYTES, type Opened, type OpenProgress, type Saved, type SavedOrChanged } from '../contract.ts';
import { keepBeside, readBeside } from './files/beside.ts';
import { previousName, shownName, unreadableName } from './files/names.ts';
import { OneAtATime } from './files/oneAtATime.ts';
import { type FileParts, MACHINE_PARTS } from './files/parts.ts';
import { type FileState, readWhole, sha256Of, strictText } from './files/readWhole.ts';
import { codeOf, FileProblem, problemWith } from './files/reasons.ts';
import { writeWhole } from './files/writeWhole.ts';

export { writeWhole } from './files/writeWhole.ts';

/** Reads a document as UTF-8 text. Throws an Error whose message is a sentence for the user. */
export async function readDocument(path: string): Promise<string> {
  const { bytes } = await readWhole(path, { limit: MAX_DOCUMENT_BYTES });
  return strictText(bytes, path);
}

interface Held {
  readonly path: string;
  /** The file as it was opened or last saved here; null where it was never read. */
  state: FileState | null;
}

/** Most copies of one unreadable file set aside on one day. */
const MAX_ASIDE = 99;

/** Open documents by opaque handle: the renderer never learns or chooses a path to write. */
export class DocumentTable {
  readonly #held = new Map<string, Held>();
  readonly #saving = new OneAtATime();
  readonly #parts: FileParts;

  constructor(parts: FileParts = MACHINE_PARTS) {
    this.#parts = parts;
  }

  /**
   * Reads a document and remembers its path, and what the file holds, under a fresh handle.
   * @param onProgress told after each megabyte
   * @param signal cancels between two megabytes
   * @throws FileProblem whose message is sentences for the user
   */
  async open(path: string, onProgress?: (progress: OpenProgress) => void, signal?: AbortSignal): Promise<Opened> {
    const limit = MAX_DOCUMENT_BYTES;
    const { bytes, state } = await readWhole(path, { limit, onProgress, signal, parts: this.#parts });
    const text = strictText(bytes, path);
    return {
      handle: this.#remember(path, state),
      name: shownName(basename(path)),
      text,
      documentId: randomUUID(),
      notes: [...(isBlank(bytes) ? [await this.#blankNote(path)] : []), ...(await this.#readOnlyNote(path))],
    };
  }

  /**
   * Writes to the path behind a handle, unless the file there is no longer what was opened or last saved here: its
   * content decides, not its time. A file that is gone is written anew, with a note. The version there was is kept.
   * @param overwrite writes whatever the file holds; the kept version is then the other's
   * @throws FileProblem whose message is sentences for the user
   */
  async save(handle: string, text: string, { overwrite } = { overwrite: false }): Promise<SavedOrChanged> {
    const held = this.#held.get(handle);
    if (held === undefined) throw new FileProblem('This document has no file yet. Use Save as and choose one.');
    return this.#saving.run(held.path, async () => {
      const bytes = encoded(text);
      const found = await stateOnDisk(held, this.#parts);
      if (found.is === 'other' && !overwrite) {
        return { kind: 'changed-on-disk', name: shownName(basename(held.path)), modifiedAt: found.modifiedAt };
      }
      const notes = await this.#write(held, bytes, found);
      return { kind: 'saved', handle, name: shownName(basename(held.path)), ...(notes.length > 0 ? { notes } : {}) };
    });
  }

  /** Writes to a path the user chose and remembers it under a fresh handle. What was there is kept as the version before. */
  async saveAs(path: string, text: string): Promise<Saved> {
    return this.#saving.run(path, async () => {
      const held: Held = { path, state: null };
      const notes = await this.#write(held, encoded(text), { is: 'chosen' });
      const handle = this.#remember(path, held.state);
      return { handle, name: shownName(basename(path)), ...(notes.length > 0 ? { notes } : {}) };
    });
  }

  /** The path behind a handle, for the recovery folder and the list of recent files. */
  pathOf(handle: string): string | undefined {
    return this.#held.get(handle)?.path;
  }

  /** The file behind a handle as it was opened or last saved here, to be kept with a recovery copy. */
  stateOf(handle: string): FileState | null {
    return this.#held.get(handle)?.state ?? null;
  }

  /**
   * A handle for a file that is to be saved to without having been read: what a recovery copy belongs to.
   * @param state as kept with the copy; without it any file there counts as changed
   */
  adopt(path: string, state: FileState | null = null): string {
    return this.#remember(path, state);
  }

  /**
   * Copies the file behind a handle, byte for byte, beside itself as `name.unreadable-<date>`, so that whatever is saved
   * over it later takes nothing away. Never over a copy there is.
   */
  async setAside(handle: string): Promise<{ name: string }> {
    const path = this.pathOf(handle);
    if (path === undefined) throw new FileProblem('This document has no file, so there is nothing to set aside.');
    return { name: await copyAside(path, this.#parts) };
  }

  /** A picture's file in the folder beside a document; null where there is none. */
  async readBeside(handle: string, fileName: string): Promise<Uint8Array<ArrayBuffer> | null> {
    const path = this.pathOf(handle);
    return path === undefined ? null : readBeside(path, fileName);
  }

  /** Keeps a picture in the folder beside a document. @throws FileProblem whose message is sentences for the user */
  async keepBeside(handle: string, fileName: string, bytes: Uint8Array): Promise<void> {
    const path = this.pathOf(handle);
    if (path === undefined) throw new FileProblem('This document has no file yet. Use Save as and choose one.');
    await keepBeside(path, fileName, bytes);
  }

  async #write(held: Held, bytes: Uint8Array, found: Found): Promise<readonly string[]> {
    const sha256 = sha256Of(bytes);
    // A save that changes nothing must not push the true version before it out of its place.
    const keepPrevious = !(found.is === 'same' && held.state?.sha256 === sha256);
    const { mtimeMs, notes } = await writeWhole(held.path, bytes, { keepPrevious, parts: this.#parts });
    held.state = { size: bytes.length, mtimeMs, sha256 };
    if (found.is !== 'gone') return notes;
    return [...notes, `${shownName(basename(held.path))} was no longer in its folder; it was written there again.`];
  }

  #remember(path: string, state: FileState | null): string {
    const handle = randomUUID();
    this.#held.set(handle, { path, state });
    return handle;
  }

  async #readOnlyNote(path: string): Promise<string[]> {
    const mayWrite = await this.#parts.fs.access(path, constants.W_OK).then(
      () => true,
      () => false,
    );
    return mayWrite
      ? []
      : [`${shownName(basename(path))} is read-only: save changes under another name, with Save as.`];
  }

  /** What to say of a file without content: a power cut leaves such files where the writer did not flush. */
  async #blankNote(path: string): Promise<string> {
    const before = previousName(basename(path));
    const isThere = await this.#parts.fs.stat(join(dirname(path), before)).then(
      (stats) => stats.size > 0,
      () => false,
    );
    const help = isThere
      ? `The version before the last save is beside it as ${shownName(before)}: copy it to a name that ends in .backstay and open that.`
      : 'Open a backup.';
    return `${shownName(basename(path))} holds nothing, as a power cut can leave a file another program was writing. ${help}`;
  }
}

type Found = { readonly is: 'same' | 'gone' | 'chosen' } | { readonly is: 'other'; readonly modifiedAt: string };

/** Compares the file with what is remembered of it. Its size is enough to tell it apart, its time is not. */
async function stateOnDisk({ path, state }: Held, parts: FileParts): Promise<Found> {
  try {
    const stats = await parts.fs.stat(path);
    const other: Found = { is: 'other', modifiedAt: stats.mtime.toISOString() };
    if (state === null || stats.size !== state.size) return other;
    const { state: now } = await readWhole(path, { limit: Number.POSITIVE_INFINITY, parts });
    return now.sha256 === state.sha256 ? { is: 'same' } : other;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return { is: 'gone' };
    throw problemWith(path, 'could not be compared with what was opened', error, 'Your work is still open here.');
  }
}

async function copyAside(path: string, parts: FileParts): Promise<string> {
  for (let count = 1; count <= MAX_ASIDE; count += 1) {
    const name = unreadableName(basename(path), parts.now(), count);
    try {
      await parts.fs.copyFile(path, join(dirname(path), name), constants.COPYFILE_EXCL);
      return name;
    } catch (error) {
      if (codeOf(error) !== 'EEXIST') throw problemWith(path, 'could not be set aside', error, 'It stays as it is.');
    }
  }
  throw new FileProblem(`${shownName(basename(path))} was set aside ${MAX_ASIDE} times today. Take some of them away.`);
}

/** A document's bytes; refused where they would be more than is read again. */
function encoded(text: string): Uint8Array {
  const bytes = new TextEncoder().encode(text);
  if (bytes.length <= MAX_DOCUMENT_BYTES) return bytes;
  const megabytes = (size: number): string => (size / 1e6).toFixed(0);
  throw new FileProblem(
    `The document is ${megabytes(bytes.length)} MB; Backstay reads documents up to ${megabytes(MAX_DOCUMENT_BYTES)} MB. ` +
      'Your work is still open here. Take pictures out of it, or divide it.',
  );
}

const isBlank = (bytes: Uint8Array): boolean => bytes.every((byte) => byte === 0 || byte === 10 || byte === 32);

/** Runs a file operation and turns its failure into an answer with a sentence. */
export async function answered<T>(
  work: () => Promise<T>,
): Promise<{ ok: true; value: T } | { ok: false; message: string }> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    return { ok: false, message: error instanceof Error ? error.message : String(error) };
  }
}
