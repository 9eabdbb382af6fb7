import type { Host, Opened, OpenProgress, Request } from '../../electron/contract.ts';
import {
  type ChosenFile,
  chooseFile,
  chooseTarget,
  download,
  droppedFile,
  type FilePickers,
  readText,
  write,
} from './browserFiles.ts';
import { BrowserRecovery } from './browserRecovery.ts';

const MEDIA_TYPES: Readonly<Record<Request<'exportFile'>['kind'], string>> = {
  pdf: 'application/pdf',
  csv: 'text/csv',
  svg: 'image/svg+xml',
  json: 'application/json',
};

/** A file that was opened or saved here, and what it was then: to notice that someone else has written to it. */
interface KnownFile {
  readonly file: File;
  readonly handle: FileSystemFileHandle | null;
}

/**
 * The browser as host. Where it can write files (File System Access), Save writes back to the file that was opened;
 * elsewhere Save as puts a file into the downloads folder and says so by its name.
 */
export function browserHost(page: Window & FilePickers): Host {
  const known = new Map<string, KnownFile>();
  const recovery = new BrowserRecovery(page.indexedDB, page.navigator.locks);
  const listeners = new Set<(progress: OpenProgress) => void>();
  let opening: AbortController | null = null;
  let hasUnsavedWork = false;
  page.addEventListener('beforeunload', (event) => {
    if (hasUnsavedWork) event.preventDefault();
  });

  const remember = (file: KnownFile, key = `file-${known.size + 1}`): string => {
    known.set(key, file);
    return key;
  };
  const opened = async (chosen: ChosenFile | null): Promise<Opened | null> => {
    if (!chosen) return null;
    opening?.abort();
    opening = new AbortController();
    const tell = (progress: OpenProgress): void => {
      for (const listener of listeners) listener(progress);
    };
    const text = await readText(chosen.file, tell, opening.signal);
    return { handle: remember(chosen), name: chosen.file.name, text, documentId: crypto.randomUUID(), notes: [] };
  };

  return {
    kind: 'browser',
    open: () => answered(async () => opened(await chooseFile(page))),
    openDropped: (drop) => answered(async () => opened(await droppedFile(drop as DataTransfer))),
    cancelOpen: () => doing(() => opening?.abort()),
    // A page cannot keep a way back to a file between two visits without asking again, so it lists none.
    openRecent: () => answered(() => refuse('The browser keeps no list of files. Use Open and choose it.')),
    recents: () => answered(async () => []),
    forgetRecents: () => doing(() => {}),
    setAside: ({ handle }) =>
      answered(async () => {
        const file = known.get(handle)?.file ?? (await refuse('That file is no longer open here.'));
        const name = `${file.name}.unreadable-${new Date().toISOString().slice(0, 10)}`;
        download(page.document, name, file);
        return { name };
      }),
    save: ({ handle, text, overwrite }) => answered(() => save(known, { handle, text, overwrite })),
    saveAs: ({ suggestedName, text }) =>
      answered(async () => {
        const handle = await chooseTarget(page, suggestedName);
        if (!handle) {
          download(page.document, suggestedName, new Blob([text], { type: 'application/json' }));
          return { handle: '', name: suggestedName };
        }
        await write(handle, text);
        return { handle: remember({ handle, file: await handle.getFile() }), name: handle.name };
      }),
    // A page is given one file at a time, never the folder it lies in.
    readBeside: () => answered(async () => null),
    keepBeside: () =>
      answered(() => refuse('The browser cannot keep pictures beside a document. Let them travel in it.')),
    exportFile: ({ suggestedName, kind, bytes }) =>
      answered(async () => {
        download(page.document, suggestedName, new Blob([new Uint8Array(bytes)], { type: MEDIA_TYPES[kind] }));
        return { name: suggestedName };
      }),
    print: ({ suggestedName, bytes }) => answered(async () => showPdf(page, suggestedName, bytes)),
    keepRecovery: (request) => doing(() => recovery.keep(request)),
    dropRecovery: ({ documentId }) => doing(() => recovery.drop(documentId)),
    recoveries: () => answered(() => recovery.list()),
    openRecovery: ({ id }) => answered(() => recovery.read(id)),
    discardRecovery: ({ id }) => doing(() => recovery.drop(id)),
    setUnsaved: ({ unsaved, title }) =>
      answered(async () => {
        hasUnsavedWork = unsaved;
        page.document.title = `${unsaved ? '• ' : ''}${title} — Backstay`;
        return null;
      }),
    newWindow: () => doing(() => page.open(page.location.href, '_blank', 'noopener')),
    openExternal: ({ url }) => answered(async () => openExternal(page, url)),
    about: () => answered(async () => ({ version: __BACKSTAY_VERSION__, electron: '', chromium: '' })),
    showLog: () => answered(() => refuse('In the browser Backstay writes no log.')),
    // The page's own menu and keys do this work; the browser has no menu of ours and opens no files for us.
    onMenu: () => () => {},
    onOpened: () => () => {},
    onProgress: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

/** Work that answers nothing but that it is done. */
const doing = (work: () => unknown): ReturnType<typeof answered<null>> =>
  answered(async () => {
    await work();
    return null;
  });

async function refuse(sentence: string): Promise<never> {
  throw new Error(sentence);
}

async function save(
  known: Map<string, KnownFile>,
  { handle: key, text, overwrite }: Request<'save'>,
): Promise<
  { kind: 'saved'; handle: string; name: string } | { kind: 'changed-on-disk'; name: string; modifiedAt: string }
> {
  const { handle, file: before } = known.get(key) ?? { handle: null, file: null };
  if (!handle || !before) {
    throw new Error('The browser cannot write to this file. Use Save as to put a copy in your downloads.');
  }
  // Where the file is gone there is nothing of anyone's to overwrite.
  const now = await handle.getFile().catch(() => null);
  if (!overwrite && now && (now.lastModified !== before.lastModified || now.size !== before.size)) {
    return { kind: 'changed-on-disk', name: handle.name, modifiedAt: new Date(now.lastModified).toISOString() };
  }
  await write(handle, text);
  known.set(key, { handle, file: await handle.getFile() });
  return { kind: 'saved', handle: key, name: handle.name };
}

/** Shows a PDF in a tab of its own, from where the browser prints it; a blocked tab leaves a download. */
function showPdf(page: Window, name: string, bytes: Uint8Array): { name: string } {
  const blob = new Blob([new Uint8Array(bytes)], { type: MEDIA_TYPES.pdf });
  const url = URL.createObjectURL(blob);
  if (page.open(url, '_blank') === null) download(page.document, name, blob);
  setTimeout(() => URL.revokeObjectURL(url), 600_000);
  return { name };
}

function openExternal(page: Window, url: string): boolean {
  if (!URL.canParse(url) || new URL(url).protocol !== 'https:') {
    throw new Error('Only web addresses that begin with https:// can be opened.');
  }
  if (!page.confirm(`Open this address in a new tab?\n\n${url}`)) return false;
  page.open(url, '_blank', 'noopener,noreferrer');
  return true;
}

/** A picker the user closes throws AbortError: that is an answer ("cancel"), not a failure. */
async function answered<T>(
  work: () => Promise<T>,
): Promise<{ ok: true; value: T } | { ok: true; value: T & null } | { ok: false; message: string }> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return { ok: true, value: null as T & null };
    return { ok: false, message: error instanceof Error ? error.message : String(error) };
  }
}
