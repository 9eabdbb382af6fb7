import { createHash } from 'node:crypto';
import type { Stats } from 'node:fs';
import { basename } from 'node:path';
import { shownName } from './names.ts';
import { type FileParts, MACHINE_PARTS } from './parts.ts';
import { codeOf, FileProblem, problemWith } from './reasons.ts';

/** A file as it was at one moment; the hash decides whether it is still the same. */
export interface FileState {
  readonly size: number;
  /** ms since 1970. */
  readonly mtimeMs: number;
  /** SHA-256 of the content, hex. */
  readonly sha256: string;
}

export interface ReadOptions {
  /** Most bytes that are read. */
  readonly limit: number;
  /** Bytes read so far, and in all. */
  readonly onProgress?: ((progress: { read: number; size: number }) => void) | undefined;
  readonly signal?: AbortSignal | undefined;
  readonly parts?: FileParts;
}

/** Read at a time, bytes: short enough for a cancel to be felt at once. */
const CHUNK_BYTES = 1_000_000;

/** Tries for a file that another program is writing meanwhile, and the pause between them, ms. */
const TRIES = 3;
const PAUSE_MS = 200;

export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/**
 * Reads a file whole, in pieces, with progress and a way to cancel. What changes while it is read is read again, so that
 * no mixture of two versions is ever answered.
 * @throws FileProblem whose message is sentences for the user
 */
export async function readWhole(
  path: string,
  options: ReadOptions,
): Promise<{ readonly bytes: Buffer; readonly state: FileState }> {
  const parts = options.parts ?? MACHINE_PARTS;
  try {
    for (let tries = 1; tries <= TRIES; tries += 1) {
      refuseOddFile(path, await parts.fs.stat(path), options.limit);
      const read = await readOnce(path, options, parts).catch((error: unknown) => {
        // A scanner or another program that holds the file lets it go again soon (Windows).
        if (codeOf(error) === 'EBUSY' && tries < TRIES) return null;
        throw error;
      });
      if (read !== null) return read;
      await parts.sleep(PAUSE_MS);
    }
  } catch (error) {
    throw problemWith(path, 'could not be opened', error);
  }
  throw new FileProblem(
    `${shownName(basename(path))} is being written by another program just now. Open it again when that is done.`,
  );
}

/** One reading; null when the file changed meanwhile. */
async function readOnce(
  path: string,
  { limit, onProgress, signal }: ReadOptions,
  parts: FileParts,
): Promise<{ bytes: Buffer; state: FileState } | null> {
  const file = await parts.fs.open(path, 'r');
  try {
    const before = await file.stat();
    refuseOddFile(path, before, limit);
    const chunks: Buffer[] = [];
    const hash = createHash('sha256');
    let read = 0;
    for (;;) {
      if (signal?.aborted) throw new FileProblem(`Opening ${shownName(basename(path))} was cancelled.`, 'ABORTED');
      const { bytesRead, buffer } = await file.read(Buffer.allocUnsafe(CHUNK_BYTES), 0, CHUNK_BYTES);
      if (bytesRead === 0) break;
      const chunk = buffer.subarray(0, bytesRead);
      chunks.push(chunk);
      // Piece by piece, so that the windows stay alive meanwhile.
      hash.update(chunk);
      read += bytesRead;
      if (read > before.size) return null;
      onProgress?.({ read, size: before.size });
    }
    const after = await file.stat();
    if (read !== before.size || after.size !== before.size || after.mtimeMs !== before.mtimeMs) return null;
    const state = { size: read, mtimeMs: after.mtimeMs, sha256: hash.digest('hex') };
    return { bytes: Buffer.concat(chunks), state };
  } finally {
    await file.close();
  }
}

function refuseOddFile(path: string, stats: Stats, limit: number): void {
  const name = shownName(basename(path));
  if (stats.isDirectory()) throw new FileProblem(`${name} could not be opened: it is a folder. Choose a file.`);
  // A pipe or a device would never end.
  if (!stats.isFile()) throw new FileProblem(`${name} is not an ordinary file. Choose a .backstay file.`);
  if (stats.size <= limit) return;
  const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(0);
  throw new FileProblem(
    `${name} is ${megabytes(stats.size)} MB; Backstay reads documents up to ${megabytes(limit)} MB. ` +
      'Check that this is a Backstay document, and not a picture or an archive.',
  );
}

/**
 * The text of a file, which has to be UTF-8 to the last byte: a wrong byte is never replaced silently.
 * @throws FileProblem that names the line of the first wrong byte
 */
export function strictText(bytes: Uint8Array, path: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const name = shownName(basename(path));
    const isUtf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
    if (isUtf16) {
      throw new FileProblem(`${name} is UTF-16 text; a Backstay document is UTF-8. Save it again as UTF-8.`);
    }
    throw new FileProblem(
      `${name} is not UTF-8 text: its line ${lineOfFirstWrongByte(bytes)} has a byte that no text has, ` +
        'so it is not a Backstay document, or it is damaged. Choose a .backstay file or open a backup.',
    );
  }
}

function lineOfFirstWrongByte(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let line = 1;
  let start = 0;
  // A newline is never part of another character, so each line can be tried by itself.
  for (let at = bytes.indexOf(10); at >= 0; at = bytes.indexOf(10, start)) {
    try {
      decoder.decode(bytes.subarray(start, at));
    } catch {
      return line;
    }
    line += 1;
    start = at + 1;
  }
  return line;
}
