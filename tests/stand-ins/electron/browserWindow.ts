import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { app, openWindows, Preventable } from './app.ts';
import { newPage, owners, type PageOwner, toStandIn } from './browser.ts';
import { PAGE_SIDE, pageScript } from './page.ts';

interface Options {
  readonly width?: number;
  readonly height?: number;
  readonly x?: number;
  readonly y?: number;
  readonly webPreferences?: { readonly preload?: string };
}

type OpenHandler = (details: { url: string }) => { action: 'deny' | 'allow' };

/** What a window shows. The page behind it changes when the renderer has crashed. */
export class WebContents extends EventEmitter implements PageOwner {
  readonly mainFrame = { origin: 'null' };
  readonly #preload: string;
  #page: Promise<Page>;
  #url = '';
  #isExpected = false;
  #onOpen: OpenHandler = () => ({ action: 'allow' });

  constructor(preload: string) {
    super();
    this.#preload = preload;
    this.#page = this.#newPage();
    app.emit('web-contents-created', {}, this);
  }

  async loadURL(url: string): Promise<void> {
    this.#url = url;
    this.mainFrame.origin = originOf(url);
    const page = await this.#page;
    this.#isExpected = true;
    await page.goto(toStandIn(url)).catch(() => {});
  }

  reload(): void {
    void this.loadURL(this.#url);
  }

  send(channel: string, ...values: unknown[]): void {
    void this.#page.then((page) =>
      page
        .evaluate(
          ([name, event, sent]) => {
            const side = (globalThis as unknown as Record<string, { emit(event: string, sent: unknown): void }>)[name];
            side?.emit(event, sent);
          },
          [PAGE_SIDE, channel, values] as const,
        )
        // A page that went away meanwhile hears nothing.
        .catch(() => {}),
    );
  }

  setWindowOpenHandler(handler: OpenHandler): void {
    this.#onOpen = handler;
  }

  setWebRTCIPHandlingPolicy(): void {}

  forcefullyCrashRenderer(): void {
    void this.#page.then(async (page) => {
      const session = await page.context().newCDPSession(page);
      // Never answered: the process that would answer is gone.
      session.send('Page.crash').catch(() => {});
    });
  }

  undo = (): void => this.#press('Control+Z');
  redo = (): void => this.#press('Control+Shift+Z');
  copy = (): void => this.#press('Control+C');
  paste = (): void => this.#press('Control+V');
  delete = (): void => this.#press('Delete');
  selectAll = (): void => this.#press('Control+A');

  mayNavigate(url: string): boolean {
    if (this.#isExpected) {
      this.#isExpected = false;
      return true;
    }
    const event = new Preventable();
    this.emit('will-navigate', event, url);
    return !event.defaultPrevented;
  }

  callEvent(isMainFrame: boolean, url: string): unknown {
    return { sender: this, senderFrame: isMainFrame ? this.mainFrame : { origin: originOf(url) } };
  }

  async destroy(): Promise<void> {
    const page = await this.#page;
    owners.delete(page);
    await page.close().catch(() => {});
  }

  #press(chord: string): void {
    void this.#page.then((page) => page.keyboard.press(chord));
  }

  async #newPage(): Promise<Page> {
    const page = await newPage();
    owners.set(page, this);
    if (this.#preload !== '') await page.addInitScript({ content: pageScript(readFileSync(this.#preload, 'utf8')) });
    page.on('load', () => this.emit('did-finish-load'));
    page.on('popup', (popup) => {
      if (this.#onOpen({ url: popup.url() }).action === 'deny') void popup.close();
    });
    page.on('crash', () => {
      owners.delete(page);
      this.#page = page
        .close()
        .catch(() => {})
        .then(() => this.#newPage());
      this.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 1 });
    });
    return page;
  }
}

const originOf = (url: string): string => {
  const { protocol, host } = new URL(url);
  return host === '' ? 'null' : `${protocol}//${host}`;
};

let focused: BrowserWindow | null = null;

export class BrowserWindow extends EventEmitter {
  readonly webContents: WebContents;
  readonly #bounds: { x: number; y: number; width: number; height: number };
  #isDestroyed = false;
  title = '';

  constructor({ x = 0, y = 0, width = 800, height = 600, webPreferences }: Options) {
    super();
    this.#bounds = { x, y, width, height };
    this.webContents = new WebContents(webPreferences?.preload ?? '');
    this.webContents.once('did-finish-load', () => this.emit('ready-to-show'));
    openWindows.add(this);
    focused = this;
  }

  loadURL = (url: string): Promise<void> => this.webContents.loadURL(url);
  isDestroyed = (): boolean => this.#isDestroyed;
  isFocused = (): boolean => focused === this;
  isMinimized = (): boolean => false;
  isMaximized = (): boolean => false;
  restore(): void {}
  maximize(): void {}
  show(): void {}
  setDocumentEdited(): void {}
  setBackgroundColor(): void {}
  getNormalBounds = (): object => ({ ...this.#bounds });
  focus(): void {
    focused = this;
  }
  setTitle(title: string): void {
    this.title = title;
  }

  /** Asks whoever listens, and closes unless one of them minds. */
  close(): void {
    if (this.#isDestroyed) return;
    const event = new Preventable();
    this.emit('close', event);
    if (event.defaultPrevented) return;
    this.#isDestroyed = true;
    openWindows.delete(this);
    if (focused === this) focused = null;
    void this.webContents.destroy();
    this.emit('closed');
    app.windowClosed();
  }
}
