import type { BrowserWindow, IpcMainInvokeEvent, Rectangle } from 'electron';
import { DocumentWindow, type WindowParts } from './documentWindow.ts';
import { boundsOn, type Placement } from './placement.ts';
import { APP_ORIGIN } from './window.ts';

export interface WindowsParts extends Omit<WindowParts, 'keptOpen'> {
  /** A fresh window without a page in it, at these bounds or where the system likes. */
  create(bounds: Rectangle | null): BrowserWindow;
  workAreas(): readonly Rectangle[];
  readPlacement(): Placement | null;
  writePlacement(placement: Placement): void;
  quit(): void;
}

/** All windows of the program. Quitting closes them one by one, and ends where the user keeps one open. */
export class Windows {
  readonly #parts: WindowsParts;
  readonly #all = new Set<DocumentWindow>();
  #isQuitting = false;

  constructor(parts: WindowsParts) {
    this.#parts = parts;
  }

  /** The window in front, or the one opened last when none of them is. */
  get current(): DocumentWindow | null {
    const all = [...this.#all];
    return all.find(({ window }) => window.isFocused()) ?? all.at(-1) ?? null;
  }

  get all(): ReadonlySet<DocumentWindow> {
    return this.#all;
  }

  open(): DocumentWindow {
    const { parts, placement } = { parts: this.#parts, placement: this.#parts.readPlacement() };
    const bounds = placement && boundsOn(placement.bounds, parts.workAreas(), this.#all.size);
    const window = parts.create(bounds);
    if (placement?.isMaximised && this.#all.size === 0) window.maximize();
    const opened = new DocumentWindow(window, {
      ...parts,
      keptOpen: () => {
        this.#isQuitting = false;
      },
    });
    this.#all.add(opened);
    window.on('close', () =>
      parts.writePlacement({ bounds: window.getNormalBounds(), isMaximised: window.isMaximized() }),
    );
    window.on('closed', () => {
      this.#all.delete(opened);
      opened.opening?.abort();
      // A quit that waited for this window's answer goes on.
      if (this.#isQuitting) parts.quit();
    });
    void window.loadURL(`${APP_ORIGIN}/index.html`);
    return opened;
  }

  quitting(): void {
    this.#isQuitting = true;
  }

  /** Where a file from outside is shown: in a window nothing has been done in, else in a new one. */
  forFile(): DocumentWindow {
    const { current } = this;
    return [current, ...this.#all].find((known) => known?.isUntouched) ?? this.open();
  }

  /** The window a call comes from, or null unless its own page makes it, in the main frame. */
  callerOf({ sender, senderFrame }: Pick<IpcMainInvokeEvent, 'sender' | 'senderFrame'>): DocumentWindow | null {
    if (senderFrame === null || senderFrame !== sender.mainFrame || senderFrame.origin !== APP_ORIGIN) return null;
    return [...this.#all].find(({ window }) => !window.isDestroyed() && window.webContents === sender) ?? null;
  }

  idsInUseBeside(caller: unknown): ReadonlySet<string> {
    return new Set([...this.#all].filter((known) => known !== caller).flatMap((known) => [...known.documentIds]));
  }
}

/** Documents named on a command line. Chromium adds switches of its own to it in any order. */
export const filesIn = (argv: readonly string[]): readonly string[] =>
  argv.slice(1).filter((argument) => !argument.startsWith('-') && /\.backstay$/i.test(argument));
