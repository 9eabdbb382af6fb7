import { randomUUID } from 'node:crypto';
import { open, readFile, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { MAX_DOCUMENT_BYTES, type Opened, type Saved } from '../contract.ts';

/** Reads a document as UTF-8 text. Throws an Error whose message is a sentence for the user. */
export async function readDocument(path: string): Promise<string> {
  const { size } = await stat(path).catch((error: unknown) => {
    throw new Error(`${basename(path)} could not be opened: ${reasonOf(error)}.`);
  });
  if (size > MAX_DOCUMENT_BYTES) {
    const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(0);
    throw new Error(
      `${basename(path)} is ${megabytes(size)} MB; Backstay reads documents up to ${megabytes(MAX_DOCUMENT_BYTES)} MB. ` +
        'Check that this is a Backstay document, and not a picture or an archive.',
    );
  }
  const bytes = await readFile(path);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Error(`${basename(path)} is not UTF-8 text, so it is not a Backstay document. Choose a .backstay file.`);
  }
}

/**
 * Writes a file so that a power cut leaves the old or the new one, never half: a temporary file of its own name in the
 * same folder, flushed to the disk, then renamed over the old.
 */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const temporary = join(dirname(path), `.${basename(path)}.${randomUUID()}.tmp`);
  try {
    const file = await open(temporary, 'wx');
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(temporary, path);
  } catch (error) {
    await rm(temporary, { force: true });
    throw new Error(`${basename(path)} could not be written: ${reasonOf(error)}. Your work is still open here.`);
  }
}

/** Open documents by opaque handle: the renderer never learns or chooses a path to write. */
export class DocumentTable {
  readonly #paths = new Map<string, string>();

  /** Reads a document and remembers its path under a fresh handle. */
  async open(path: string): Promise<Opened> {
    const text = await readDocument(path);
    return { handle: this.#remember(path), name: basename(path), text };
  }

  /** Writes to the path behind a handle. */
  async save(handle: string, text: string): Promise<Saved> {
    const path = this.#paths.get(handle);
    if (path === undefined) throw new Error('This document has no file yet. Use Save as and choose one.');
    await writeWhole(path, new TextEncoder().encode(text));
    return { handle, name: basename(path) };
  }

  /** Writes to a path the user chose and remembers it under a fresh handle. */
  async saveAs(path: string, text: string): Promise<Saved> {
    await writeWhole(path, new TextEncoder().encode(text));
    return { handle: this.#remember(path), name: basename(path) };
  }

  #remember(path: string): string {
    const handle = randomUUID();
    this.#paths.set(handle, path);
    return handle;
  }
}

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

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'permission was refused',
  EPERM: 'the system does not allow it',
  EROFS: 'the folder is read-only',
  ENOSPC: 'the disk is full',
  EISDIR: 'it is a folder',
  EBUSY: 'another program is holding it',
};

function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}
