import { MAX_DOCUMENT_BYTES, type OpenProgress } from '../../electron/contract.ts';

/** A file of the user's, as far as this browser lets the page have it: with a way back to it, or only its content. */
export interface ChosenFile {
  readonly file: File;
  readonly handle: FileSystemFileHandle | null;
}

/** What the File System Access calls look like where a browser has them; the standard types do not list them all. */
export interface FilePickers {
  showOpenFilePicker?(options: object): Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileSystemFileHandle>;
}
interface DroppedItem {
  getAsFileSystemHandle?(): Promise<FileSystemHandle | null>;
}

const DOCUMENT_TYPE = { description: 'Backstay document', accept: { 'application/json': ['.backstay'] } };

/** Asks the user for a document; null when there was none. */
export async function chooseFile(page: Window & FilePickers): Promise<ChosenFile | null> {
  if (!page.showOpenFilePicker) return chooseByInput(page.document);
  const [handle] = await page.showOpenFilePicker({ types: [DOCUMENT_TYPE] });
  return handle ? { handle, file: await handle.getFile() } : null;
}

/** Asks the user where to save; null where the browser has no such dialog. */
export async function chooseTarget(page: FilePickers, suggestedName: string): Promise<FileSystemFileHandle | null> {
  return (await page.showSaveFilePicker?.({ suggestedName, types: [DOCUMENT_TYPE] })) ?? null;
}

/** The first file of a drop. Must be called while the drop is being handled: afterwards the browser has let it go. */
export async function droppedFile(drop: DataTransfer): Promise<ChosenFile | null> {
  const [file] = drop.files;
  const item = [...drop.items].find(({ kind }) => kind === 'file') as (DataTransferItem & DroppedItem) | undefined;
  if (!file) return null;
  const handle = (await item?.getAsFileSystemHandle?.()) ?? null;
  return { file, handle: handle?.kind === 'file' ? (handle as FileSystemFileHandle) : null };
}

/** The way in for browsers without file pickers of their own; Save then has no file to write back to. */
function chooseByInput(document: Document): Promise<ChosenFile | null> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.backstay';
  return new Promise((resolve) => {
    input.addEventListener('cancel', () => resolve(null));
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      resolve(file ? { file, handle: null } : null);
    });
    input.click();
  });
}

/**
 * Reads a document as text, piece by piece.
 * @throws Error with a sentence for a file too large or not text; DOMException AbortError when `signal` is aborted
 */
export async function readText(
  file: File,
  onProgress: (progress: OpenProgress) => void,
  signal: AbortSignal,
): Promise<string> {
  if (file.size > MAX_DOCUMENT_BYTES) {
    throw new Error(
      `${file.name} is ${(file.size / 1e6).toFixed(0)} MB; Backstay reads documents up to ${MAX_DOCUMENT_BYTES / 1e6} MB. ` +
        'Check that this is a Backstay document, and not a picture or an archive.',
    );
  }
  const reader = file.stream().getReader();
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  let read = 0;
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    signal.throwIfAborted();
    pieces.push(piece.value);
    read += piece.value.byteLength;
    onProgress({ read, size: file.size });
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await new Blob(pieces).arrayBuffer());
  } catch {
    throw new Error(`${file.name} is not UTF-8 text, so it is not a Backstay document. Choose a .backstay file.`);
  }
}

/** Writes through the browser's own temporary copy, which takes the file's place only when it is whole. */
export async function write(file: FileSystemFileHandle, text: string): Promise<void> {
  const stream = await file.createWritable();
  await stream.write(text);
  await stream.close();
}

/** Puts a file into the downloads folder. */
export function download(document: Document, name: string, blob: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  // Revoked only after the browser has had time to start the download.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
