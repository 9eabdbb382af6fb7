import { basename } from 'node:path';
import type { FileFilter } from 'electron';
import type { Opened, Request, Saved, SavedOrChanged } from '../contract.ts';
import type { Work } from './handlers.ts';
import { type Caller, type HandlerParts, nowOpen } from './parts.ts';

const DOCUMENT_FILTERS: readonly FileFilter[] = [{ name: 'Backstay document', extensions: ['backstay'] }];
const EXPORT_FILTERS: Readonly<Record<Request<'exportFile'>['kind'], FileFilter>> = {
  pdf: { name: 'PDF', extensions: ['pdf'] },
  csv: { name: 'CSV', extensions: ['csv'] },
  svg: { name: 'SVG drawing', extensions: ['svg'] },
  json: { name: 'JSON', extensions: ['json'] },
};

type FileChannel =
  | 'open'
  | 'openDropped'
  | 'openRecent'
  | 'cancelOpen'
  | 'recents'
  | 'forgetRecents'
  | 'setAside'
  | 'save'
  | 'saveAs'
  | 'readBeside'
  | 'keepBeside'
  | 'exportFile';

/** Opening, saving and exporting. The user chooses every path in a dialog of the system's, or drops the file itself. */
export function fileWork(parts: HandlerParts): Work<FileChannel> {
  const { documents, recents } = parts;
  return {
    open: async (_nothing, caller) => {
      const path = await caller.chooseFile(DOCUMENT_FILTERS);
      return path === null ? null : openDocument(parts, caller, path);
    },
    openDropped: async ({ path }, caller) => {
      // A page that was taken over could name any path here: only documents can be had this way.
      if (!path.toLowerCase().endsWith('.backstay')) {
        throw new Error('Only Backstay documents can be dropped here. Drop a file whose name ends in .backstay.');
      }
      return openDocument(parts, caller, path);
    },
    openRecent: async ({ id }, caller) => {
      const path = await recents.pathOf(id);
      if (path === undefined) throw new Error('That file is no longer in the list. Use Open and choose it.');
      return openDocument(parts, caller, path);
    },
    cancelOpen: async (_nothing, caller) => {
      caller.opening?.abort();
      return null;
    },
    recents: async () => [...(await recents.list())],
    forgetRecents: async () => {
      await recents.clear();
      parts.recentsChanged();
      return null;
    },
    setAside: async ({ handle }, caller) => documents.setAside(owned(caller, handle)),
    save: async ({ handle, text, overwrite }, caller) => {
      const saving = async (): Promise<SavedOrChanged> => documents.save(owned(caller, handle), text, { overwrite });
      return ending(caller, ({ kind }) => kind === 'saved', saving());
    },
    saveAs: (request, caller) => ending(caller, (saved) => saved !== null, saveAs(parts, request, caller)),
    readBeside: async ({ handle, fileName }, caller) => parts.documents.readBeside(owned(caller, handle), fileName),
    keepBeside: ({ handle, fileName, bytes }, caller) => {
      // Part of a save: one that fails is a save that did not come about.
      const keeping = async (): Promise<null> => {
        await parts.documents.keepBeside(owned(caller, handle), fileName, bytes);
        return null;
      };
      return ending(caller, () => true, keeping());
    },
    exportFile: async ({ suggestedName, kind, bytes }, caller) => {
      const path = await caller.chooseTarget(safeName(suggestedName), [EXPORT_FILTERS[kind]]);
      if (path === null) return null;
      await parts.writeWhole(path, bytes);
      return { name: basename(path) };
    },
  };
}

async function saveAs(
  parts: HandlerParts,
  { suggestedName, text }: Request<'saveAs'>,
  caller: Caller,
): Promise<Saved | null> {
  const path = await caller.chooseTarget(safeName(suggestedName), DOCUMENT_FILTERS);
  if (path === null) return null;
  const saved = await parts.documents.saveAs(path, text);
  caller.handles.add(saved.handle);
  await remember(parts, path);
  return saved;
}

/** Tells the window that a save began, and how it ended, whatever the end. */
async function ending<T>(caller: Caller, isSaved: (answer: T) => boolean, saving: Promise<T>): Promise<T> {
  caller.saveBegan();
  try {
    const answer = await saving;
    caller.saveEnded(isSaved(answer));
    return answer;
  } catch (error) {
    caller.saveEnded(false);
    throw error;
  }
}

/** Reads a document for a window: one at a time, with progress, until it is there or the user has cancelled (null). */
export async function openDocument(
  parts: Pick<HandlerParts, 'documents' | 'recents' | 'recentsChanged' | 'log'>,
  caller: Caller,
  path: string,
): Promise<Opened | null> {
  caller.opening?.abort();
  const controller = new AbortController();
  caller.opening = controller;
  try {
    const opened = await parts.documents.open(path, (progress) => caller.tellProgress(progress), controller.signal);
    if (controller.signal.aborted) return null;
    caller.handles.add(opened.handle);
    nowOpen(caller, opened.documentId);
    await remember(parts, path);
    return opened;
  } catch (error) {
    if (controller.signal.aborted) return null;
    throw error;
  } finally {
    if (caller.opening === controller) caller.opening = null;
  }
}

/** The list of recent files is a convenience: a disk that refuses it must not spoil the opening or saving itself. */
async function remember(parts: Pick<HandlerParts, 'recents' | 'recentsChanged' | 'log'>, path: string): Promise<void> {
  try {
    await parts.recents.add(path);
    parts.recentsChanged();
  } catch {
    parts.log('recents-not-kept');
  }
}

/** A handle the calling window was given. A forged one, or another window's, gets the sentence of a new document. */
function owned(caller: Caller, handle: string): string {
  if (!caller.handles.has(handle)) throw new Error('This document has no file yet. Use Save as and choose one.');
  return handle;
}

/** Longest file name offered to the user, characters: file systems take 255 bytes, and some scripts need three each. */
const LONGEST_NAME = 80;

/**
 * A name to suggest in a save dialog: no folder of anyone's choosing, nothing a file system minds or a reader misreads
 * (control characters, and marks that turn the writing direction and so hide the true ending).
 */
export function safeName(suggested: string): string {
  const name = suggested
    .replace(/^.*[/\\]/s, '')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
    .replace(/[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '')
    .replace(/[<>:"|?*]/g, '-')
    .replace(/^\.+/, '')
    .trim();
  const [, stem = name, ending = ''] = /^(.*?)(\.[A-Za-z0-9]{1,12})?$/s.exec(name) ?? [];
  const letters = [...stem].slice(0, LONGEST_NAME).join('').trim();
  // Names Windows keeps for devices, whatever their ending.
  const isDevice = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(letters);
  return `${letters === '' || isDevice ? 'boat' : letters}${ending}`;
}
