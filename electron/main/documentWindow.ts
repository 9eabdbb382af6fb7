import type { BrowserWindow, Dialog, FileFilter, MessageBoxOptions } from 'electron';
import type { MenuCommand, Opened, OpenProgress, TextCommand } from '../contract.ts';
import type { Log } from './log.ts';
import type { Caller } from './parts.ts';

export interface WindowParts {
  readonly dialog: Pick<Dialog, 'showMessageBox' | 'showOpenDialog' | 'showSaveDialog'>;
  readonly log: Log;
  /** ms since 1970. */
  now(): number;
  /** The user has given up the unsaved work of the document that is open: its recovery copy goes too. */
  giveUp(documentId: string): Promise<void>;
  /** The user keeps the window open, so that the program does not quit. */
  keptOpen(): void;
}

interface Events {
  readonly menu: MenuCommand;
  readonly opened: Opened;
  readonly progress: OpenProgress;
}

/** After more crashes than this within a minute the user is asked before the page is started once more. */
const CRASHES_A_MINUTE = 2;
/** The page begins to save this soon after it was asked to, and ends this soon after a file is written, or does not, ms. */
const PAGE_ANSWERS_MS = 5000;
const LONGEST_TITLE = 120;

/** A window and the document in it: its unsaved work, its handles, how it closes and how it comes back from a crash. */
export class DocumentWindow implements Caller {
  readonly handles = new Set<string>();
  readonly documentIds = new Set<string>();
  opening: AbortController | null = null;
  readonly #window: BrowserWindow;
  readonly #parts: WindowParts;
  #isUnsaved = false;
  #isLoaded = false;
  #waiting: (() => void)[] = [];
  #closing: 'no' | 'asking' | 'after-save' | 'agreed' = 'no';
  #crashes: number[] = [];
  #patience: ReturnType<typeof setTimeout> | undefined;

  constructor(window: BrowserWindow, parts: WindowParts) {
    this.#window = window;
    this.#parts = parts;
    window.once('ready-to-show', () => window.show());
    window.on('close', (event) => {
      if (this.#closing === 'agreed' || !this.#isUnsaved) return;
      event.preventDefault();
      void this.#askToClose();
    });
    window.webContents.on('did-finish-load', () => {
      this.#isLoaded = true;
      for (const work of this.#waiting.splice(0)) work();
    });
    window.webContents.on('render-process-gone', (_event, { reason }) => {
      if (reason !== 'clean-exit') void this.#comeBack(reason);
    });
    window.on('unresponsive', () => void this.#askToRestart());
  }

  get window(): BrowserWindow {
    return this.#window;
  }

  /** Whether nothing was opened, is being opened, was saved or changed here, so that a file from outside may be shown in it. */
  get isUntouched(): boolean {
    return !this.#isUnsaved && this.handles.size === 0 && this.opening === null;
  }

  /** Sends an event to the page, once it is there. */
  tell<E extends keyof Events>(event: E, value: Events[E]): void {
    this.whenLoaded(() => {
      if (!this.#window.isDestroyed()) this.#window.webContents.send(event, value);
    });
  }

  whenLoaded(work: () => void): void {
    if (this.#isLoaded) work();
    else this.#waiting.push(work);
  }

  async chooseFile(filters: readonly FileFilter[]): Promise<string | null> {
    const options = { properties: ['openFile' as const], filters: [...filters] };
    const { canceled, filePaths } = await this.#parts.dialog.showOpenDialog(this.#window, options);
    return canceled ? null : (filePaths[0] ?? null);
  }

  async chooseTarget(suggestedName: string, filters: readonly FileFilter[]): Promise<string | null> {
    const options = { defaultPath: suggestedName, filters: [...filters] };
    const { canceled, filePath } = await this.#parts.dialog.showSaveDialog(this.#window, options);
    return canceled || filePath === '' ? null : filePath;
  }

  setUnsaved(unsaved: boolean, title: string): void {
    this.#isUnsaved = unsaved;
    const shown = [...title.replace(/[\p{Cc}\p{Cf}]/gu, ' ')].slice(0, LONGEST_TITLE).join('');
    this.#window.setTitle(`${unsaved ? '• ' : ''}${shown} — Backstay`);
    this.#window.setDocumentEdited(unsaved);
    if (!unsaved && this.#closing === 'after-save') this.#close();
  }

  saveBegan(): void {
    clearTimeout(this.#patience);
  }

  saveEnded(isSaved: boolean): void {
    if (this.#closing !== 'after-save') return;
    // Else the window would close some time later, at a save nobody expects that of. The page has more to do after a file
    // is written, such as its pictures, and says at the end of it that nothing is unsaved; or it does not.
    if (isSaved) this.#waitForPage();
    else this.#stay();
  }

  tellProgress(progress: OpenProgress): void {
    this.tell('progress', progress);
  }

  editText(command: TextCommand): void {
    const contents = this.#window.webContents;
    const work: Readonly<Record<TextCommand, () => void>> = {
      undo: () => contents.undo(),
      redo: () => contents.redo(),
      copy: () => contents.copy(),
      paste: () => contents.paste(),
      delete: () => contents.delete(),
      'select-all': () => contents.selectAll(),
    };
    work[command]();
  }

  async mayOpen(url: string): Promise<boolean> {
    const choice = await this.#ask({
      message: 'Open this address in your web browser?',
      detail: url,
      buttons: ['Open', 'Cancel'],
      defaultId: 1,
      cancelId: 1,
    });
    return choice === 0;
  }

  /** Says what went wrong with a file that was opened from outside. */
  async sayProblem(message: string): Promise<void> {
    await this.#ask({ type: 'error', message: 'The file was not opened.', detail: message, buttons: ['Close'] });
  }

  focus(): void {
    if (this.#window.isMinimized()) this.#window.restore();
    this.#window.show();
    this.#window.focus();
  }

  async #askToClose(): Promise<void> {
    if (this.#closing === 'asking') return;
    this.#closing = 'asking';
    const choice = await this.#ask({
      message: 'Save the changes before closing?',
      detail: 'Without saving, what was changed since the last save is lost.',
      buttons: ['Save', 'Close without saving', 'Cancel'],
      defaultId: 0,
      cancelId: 2,
    });
    if (choice === 0 && this.#isUnsaved) {
      this.#closing = 'after-save';
      this.tell('menu', 'save');
      // A page that is busy with a question of its own does not begin to save.
      this.#waitForPage();
    } else if (choice === 2) this.#stay();
    else {
      // Only that of what is open: work set aside for someone else's was promised to be kept.
      const openNow = [...this.documentIds].at(-1);
      if (choice === 1 && openNow !== undefined) await this.#parts.giveUp(openNow);
      this.#close();
    }
  }

  /** Keeps the window open unless the page does its next step towards a save in time. */
  #waitForPage(): void {
    clearTimeout(this.#patience);
    this.#patience = setTimeout(() => this.#closing === 'after-save' && this.#stay(), PAGE_ANSWERS_MS);
  }

  #close(): void {
    clearTimeout(this.#patience);
    this.#closing = 'agreed';
    // Not within the answer to the page's own call, which would be left without its answer.
    setImmediate(() => {
      if (!this.#window.isDestroyed()) this.#window.close();
    });
  }

  #stay(): void {
    clearTimeout(this.#patience);
    this.#closing = 'no';
    this.#parts.keptOpen();
  }

  /** Starts the page afresh after its process has gone. It finds the recovery copy of what was open and offers it. */
  async #comeBack(reason: string): Promise<void> {
    this.#parts.log('page-gone', { reason });
    this.handles.clear();
    this.documentIds.clear();
    this.opening?.abort();
    this.#isUnsaved = false;
    this.#isLoaded = false;
    this.#closing = 'no';
    const now = this.#parts.now();
    this.#crashes = [...this.#crashes.filter((at) => now - at < 60_000), now];
    if (this.#crashes.length > CRASHES_A_MINUTE) {
      const choice = await this.#ask({
        type: 'error',
        message: 'Backstay’s page has stopped several times.',
        detail: 'The last recovery copy of your work is kept. Start the page again, or close this window.',
        buttons: ['Start again', 'Close'],
        defaultId: 0,
        cancelId: 1,
      });
      if (choice === 1) return this.#close();
    }
    if (!this.#window.isDestroyed()) this.#window.webContents.reload();
  }

  async #askToRestart(): Promise<void> {
    this.#parts.log('page-hangs');
    const choice = await this.#ask({
      type: 'warning',
      message: 'Backstay is not answering.',
      detail: 'Wait a little, or start the page again from the last recovery copy.',
      buttons: ['Wait', 'Start again'],
      defaultId: 0,
      cancelId: 0,
    });
    // Its end is seen like a crash, and the window comes back.
    if (choice === 1 && !this.#window.isDestroyed()) this.#window.webContents.forcefullyCrashRenderer();
  }

  async #ask(options: MessageBoxOptions): Promise<number> {
    const { response } = await this.#parts.dialog.showMessageBox(this.#window, { type: 'question', ...options });
    return response;
  }
}
