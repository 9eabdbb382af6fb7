import { shownName } from '../files/names.ts';
import { type FileState, sha256Of } from '../files/readWhole.ts';

/** Unsaved work as it is kept: the document's text and where it belongs. */
export interface RecoveryEntry {
  readonly documentId: string;
  /** The file it was opened from or last saved to; null for a document that has none. */
  readonly path: string | null;
  /** That file as it was opened or last saved, to notice a change made by someone else meanwhile. */
  readonly origin?: FileState | null;
  /** The file's name, or what a new document is called. */
  readonly name: string;
  readonly title: string;
  readonly text: string;
}

/** An entry as it was read back, with whatever of it can be read. */
export interface KeptEntry extends Omit<RecoveryEntry, 'documentId' | 'origin'> {
  readonly origin: FileState | null;
  /** ms since 1970; null where the head cannot be read. */
  readonly keptAt: number | null;
  /** Whether head and text are as they were written. */
  readonly isWhole: boolean;
}

const FORMAT = 'backstay-recovery';

/**
 * The bytes of a recovery file: one line of JSON that says what it is, then the document's own text to the end. So the
 * text can be read by eye or taken out with an editor, and what is left of a damaged file still shows.
 */
export function writeEntry(entry: RecoveryEntry, keptAt: number): Uint8Array {
  const text = new TextEncoder().encode(entry.text);
  const head = JSON.stringify({
    format: FORMAT,
    version: 1,
    title: shownName(entry.title),
    name: shownName(entry.name),
    path: entry.path,
    origin: entry.origin ?? null,
    keptAt: new Date(keptAt).toISOString(),
    bytes: text.length,
    sha256: sha256Of(text),
  });
  const bytes = Buffer.concat([Buffer.from(`${head}\n`, 'utf8'), text]);
  return bytes;
}

/** Reads a recovery file in whatever state it is. Never throws. */
export function readEntry(bytes: Uint8Array): KeptEntry {
  const lineEnd = bytes.indexOf(10);
  const head = lineEnd < 0 ? null : headOf(bytes.subarray(0, lineEnd));
  // Without a head the whole file is shown as text: the line may be all there is.
  const rest = head === null ? bytes : bytes.subarray(lineEnd + 1);
  const text = new TextDecoder('utf-8').decode(rest);
  if (head === null) {
    return { path: null, origin: null, name: '', title: '', text, keptAt: null, isWhole: false };
  }
  const keptAt = typeof head.keptAt === 'string' ? Date.parse(head.keptAt) : Number.NaN;
  return {
    path: typeof head.path === 'string' && head.path !== '' ? head.path : null,
    origin: stateIn(head.origin),
    name: shownName(textIn(head.name)),
    title: shownName(textIn(head.title)),
    text,
    keptAt: Number.isFinite(keptAt) ? keptAt : null,
    isWhole: head.version === 1 && head.bytes === rest.length && head.sha256 === sha256Of(rest),
  };
}

function headOf(line: Uint8Array): Readonly<Record<string, unknown>> | null {
  try {
    const head: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(line));
    if (typeof head !== 'object' || head === null || !('format' in head) || head.format !== FORMAT) return null;
    return head as Readonly<Record<string, unknown>>;
  } catch {
    return null;
  }
}

function stateIn(value: unknown): FileState | null {
  if (typeof value !== 'object' || value === null) return null;
  const { size, mtimeMs, sha256 } = value as Readonly<Record<string, unknown>>;
  const isState = typeof size === 'number' && typeof mtimeMs === 'number' && typeof sha256 === 'string';
  return isState ? { size, mtimeMs, sha256 } : null;
}

const textIn = (value: unknown): string => (typeof value === 'string' ? value : '');
