import { type Host, MAX_DOCUMENT_BYTES, type Opened, type Request } from '../../electron/contract.ts';

/** What the File System Access pickers look like where a browser has them; the standard types do not list them yet. */
interface FilePickers {
  showOpenFilePicker?(options: object): Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileSystemFileHandle>;
}

const DOCUMENT_TYPE = { description: 'Backstay document', accept: { 'application/json': ['.backstay'] } };
const MEDIA_TYPES: Readonly<Record<Request<'exportFile'>['kind'], string>> = {
  pdf: 'application/pdf',
  csv: 'text/csv',
  svg: 'image/svg+xml',
  json: 'application/json',
};

/**
 * The browser as host. Where it can write files (File System Access), Save writes back to the file that was opened;
 * elsewhere Save as puts a file into the downloads folder and says so by its name.
 */
export function browserHost(page: Window & FilePickers): Host {
  const handles = new Map<string, FileSystemFileHandle>();
  const remember = (handle: FileSystemFileHandle): string => {
    const key = `file-${handles.size + 1}`;
    handles.set(key, handle);
    return key;
  };
  let hasUnsavedWork = false;
  page.addEventListener('beforeunload', (event) => {
    if (hasUnsavedWork) event.preventDefault();
  });

  return {
    kind: 'browser',
    open: () =>
      answered(async () => {
        if (!page.showOpenFilePicker) return openByInput(page.document);
        const [handle] = await page.showOpenFilePicker({ types: [DOCUMENT_TYPE] });
        return handle ? { handle: remember(handle), ...(await readFile(await handle.getFile())) } : null;
      }),
    save: ({ handle, text }) =>
      answered(async () => {
        const file = handles.get(handle);
        if (!file)
          throw new Error('The browser cannot write to this file. Use Save as to put a copy in your downloads.');
        await write(file, text);
        return { handle, name: file.name };
      }),
    saveAs: ({ suggestedName, text }) =>
      answered(async () => {
        if (!page.showSaveFilePicker) {
          download(page.document, suggestedName, new Blob([text], { type: 'application/json' }));
          return { handle: '', name: suggestedName };
        }
        const file = await page.showSaveFilePicker({ suggestedName, types: [DOCUMENT_TYPE] });
        await write(file, text);
        return { handle: remember(file), name: file.name };
      }),
    exportFile: ({ suggestedName, kind, bytes }) =>
      answered(async () => {
        download(page.document, suggestedName, new Blob([new Uint8Array(bytes)], { type: MEDIA_TYPES[kind] }));
        return { name: suggestedName };
      }),
    setUnsaved: ({ unsaved, title }) =>
      answered(async () => {
        hasUnsavedWork = unsaved;
        page.document.title = `${unsaved ? '• ' : ''}${title} — Backstay`;
        return null;
      }),
    // The page's own menu and keys do this work; the browser has no menu of ours and opens no files for us.
    onMenu: () => () => {},
    onOpened: () => () => {},
  };
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

async function readFile(file: File): Promise<Omit<Opened, 'handle'>> {
  if (file.size > MAX_DOCUMENT_BYTES) {
    throw new Error(
      `${file.name} is ${(file.size / 1e6).toFixed(0)} MB; Backstay reads documents up to ${MAX_DOCUMENT_BYTES / 1e6} MB. ` +
        'Check that this is a Backstay document, and not a picture or an archive.',
    );
  }
  return { name: file.name, text: await file.text() };
}

/** The way in for browsers without file pickers of their own; Save then has no file to write back to. */
function openByInput(document: Document): Promise<Opened | null> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.backstay';
  return new Promise((resolve, reject) => {
    input.addEventListener('cancel', () => resolve(null));
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      if (!file) return resolve(null);
      readFile(file).then((read) => resolve({ handle: '', ...read }), reject);
    });
    input.click();
  });
}

async function write(file: FileSystemFileHandle, text: string): Promise<void> {
  const stream = await file.createWritable();
  await stream.write(text);
  await stream.close();
}

function download(document: Document, name: string, blob: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  // Revoked only after the browser has had time to start the download.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
