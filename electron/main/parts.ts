import type { FileFilter, IpcMain, IpcMainInvokeEvent } from 'electron';
import type { About, OpenProgress, Request, TextCommand } from '../contract.ts';
import type { DocumentTable } from '../node/documents.ts';
import type { RecentFiles } from '../node/recent.ts';
import type { RecoveryStore } from '../node/recovery/recovery.ts';
import type { Log } from './log.ts';

/** Open documents by handle: all paths stay behind it. */
export type Documents = Pick<
  DocumentTable,
  'open' | 'save' | 'saveAs' | 'setAside' | 'readBeside' | 'keepBeside' | 'pathOf' | 'stateOf' | 'adopt'
>;
export type RecoveryCopies = Pick<RecoveryStore, 'keep' | 'drop' | 'list' | 'read'>;
export type Recents = Pick<RecentFiles, 'add' | 'list' | 'pathOf' | 'clear'>;

/** The window a call comes from, as far as the handlers care. Each has its own documents. */
export interface Caller {
  /** Handles this window was given; it may use no other window's. */
  readonly handles: Set<string>;
  /** Ids of the documents this window has opened or kept copies of; the last is that of the one open now. */
  readonly documentIds: Set<string>;
  /** The reading that is going on for this window, to be cancelled. */
  opening: AbortController | null;
  /** Where the user wants to open a file; null when the dialog was closed. */
  chooseFile(filters: readonly FileFilter[]): Promise<string | null>;
  /** Where the user wants to save to; null when the dialog was closed. */
  chooseTarget(suggestedName: string, filters: readonly FileFilter[]): Promise<string | null>;
  setUnsaved(unsaved: boolean, title: string): void;
  saveBegan(): void;
  /** A file of a save is written, or could not be: a window that was to close after it waits for the page, or stays. */
  saveEnded(isSaved: boolean): void;
  tellProgress(progress: OpenProgress): void;
  editText(command: TextCommand): void;
  /** Asks whether an address may be opened in the system's browser. */
  mayOpen(url: string): Promise<boolean>;
}

/** Puts a document's id last among its window's: it is the one open now. */
export function nowOpen({ documentIds }: Pick<Caller, 'documentIds'>, documentId: string): void {
  documentIds.delete(documentId);
  documentIds.add(documentId);
}

/** The Electron and Node parts the handlers need, so that they run under test without the runtime. */
export interface HandlerParts {
  readonly ipcMain: Pick<IpcMain, 'handle'>;
  readonly documents: Documents;
  readonly recovery: RecoveryCopies;
  readonly recents: Recents;
  readonly about: About;
  /** The window of a call, or null unless it comes from the app's own page in a window's main frame. */
  callerOf(event: IpcMainInvokeEvent): Caller | null;
  /** Document ids in use in windows other than this one: their recovery copies are not up for recovery. */
  idsInUseBeside(caller: Caller): ReadonlySet<string>;
  writeWhole(path: string, bytes: Uint8Array): Promise<void>;
  /** Shows a PDF in the system's viewer. */
  showPdf(request: Request<'print'>): Promise<{ name: string }>;
  openExternal(url: string): Promise<void>;
  openWindow(): void;
  showLog(): Promise<void>;
  readonly log: Log;
  recentsChanged(): void;
}
