import { EventEmitter } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

/** A part of Electron's events that can be prevented. */
export class Preventable {
  defaultPrevented = false;
  preventDefault(): void {
    this.defaultPrevented = true;
  }
}

/** Windows there are, each with its own way of closing; kept here so that quitting can close them. */
export interface Closable {
  close(): void;
  isDestroyed(): boolean;
}
export const openWindows = new Set<Closable>();

const switchIn = (name: string): string | undefined =>
  process.argv.find((argument) => argument.startsWith(`--${name}=`))?.slice(name.length + 3);
export const userData = resolve(switchIn('user-data-dir') ?? join(tmpdir(), `backstay-stand-in-${process.pid}`));
const LOCK = join(userData, 'stand-in.lock');
const MESSAGES = join(userData, 'stand-in-starts');

const isAlive = (pid: number): boolean => {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
};

class App extends EventEmitter {
  readonly isPackaged = false;
  readonly commandLine = { appendSwitch: (): void => {} };
  #isQuitting = false;
  /** Run before the process ends. */
  readonly beforeExit: (() => Promise<void>)[] = [];

  getPath(name: string): string {
    if (name === 'temp') return tmpdir();
    const path = name === 'userData' ? userData : join(userData, name);
    mkdirSync(path, { recursive: true });
    return path;
  }

  getVersion(): string {
    const file = resolve(dirname(process.argv[1] ?? '.'), '../../package.json');
    return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')).version as string) : '0.0.0';
  }

  enableSandbox(): void {}
  setAppUserModelId(): void {}
  addRecentDocument(): void {}
  clearRecentDocuments(): void {}

  /** The first process of a profile keeps a file with its number; a later one leaves its arguments for it and goes. */
  requestSingleInstanceLock(): boolean {
    mkdirSync(MESSAGES, { recursive: true });
    if (existsSync(LOCK) && isAlive(Number(readFileSync(LOCK, 'utf8')))) {
      const message = JSON.stringify({ argv: process.argv, folder: process.cwd() });
      writeFileSync(join(MESSAGES, `${process.pid}.json`), message);
      return false;
    }
    writeFileSync(LOCK, String(process.pid));
    setInterval(() => this.#readStarts(), 100).unref();
    return true;
  }

  #readStarts(): void {
    for (const name of readdirSync(MESSAGES)) {
      const file = join(MESSAGES, name);
      const { argv, folder } = JSON.parse(readFileSync(file, 'utf8')) as { argv: string[]; folder: string };
      rmSync(file);
      this.emit('second-instance', {}, argv, folder);
    }
  }

  async whenReady(): Promise<void> {
    // As with the real runtime, whatever main does while it is loaded comes first.
    await pause(1);
    this.emit('ready');
  }

  /** Closes window after window, and ends the process unless one of them is kept. */
  quit(): void {
    if (this.#isQuitting) return;
    this.emit('before-quit', new Preventable());
    for (const window of [...openWindows]) {
      window.close();
      if (!window.isDestroyed()) return;
    }
    this.#isQuitting = true;
    this.emit('will-quit', new Preventable());
    void this.exit(0);
  }

  async exit(code: number): Promise<void> {
    await Promise.all(this.beforeExit.map((work) => work().catch(() => {})));
    process.exit(code);
  }

  windowClosed(): void {
    if (openWindows.size === 0 && !this.#isQuitting) this.emit('window-all-closed');
  }
}
export const app = new App();

type AppHandler = (request: Request) => Promise<Response>;
export const protocol = {
  handlers: new Map<string, AppHandler>(),
  registerSchemesAsPrivileged(): void {},
  handle(scheme: string, handler: AppHandler): void {
    this.handlers.set(scheme, handler);
  },
};

type OnBeforeRequest = (details: { url: string }, answer: (how: { cancel?: boolean }) => void) => void;
type OnPermission = (contents: unknown, permission: string, answer: (isGranted: boolean) => void) => void;
class Session {
  onBeforeRequest: OnBeforeRequest | null = null;
  onPermission: OnPermission | null = null;
  checkPermission: ((contents: unknown, permission: string) => boolean) | null = null;
  readonly webRequest = {
    onBeforeRequest: (listener: OnBeforeRequest): void => {
      this.onBeforeRequest = listener;
    },
  };
  setPermissionRequestHandler(handler: OnPermission): void {
    this.onPermission = handler;
  }
  setPermissionCheckHandler(handler: (contents: unknown, permission: string) => boolean): void {
    this.checkPermission = handler;
  }
  setDevicePermissionHandler(): void {}
  setDisplayMediaRequestHandler(): void {}
  setSpellCheckerEnabled(): void {}

  /** As the real runtime does it: without handlers everything is granted. */
  grants(permission: string): boolean {
    let isGranted = this.onPermission === null;
    this.onPermission?.(null, permission, (answer) => {
      isGranted = answer;
    });
    return isGranted && (this.checkPermission?.(null, permission) ?? true);
  }

  mayLoad(url: string): boolean {
    let isCancelled = false;
    this.onBeforeRequest?.({ url }, ({ cancel }) => {
      isCancelled = cancel ?? false;
    });
    return !isCancelled;
  }
}
export const session = { defaultSession: new Session() };

export interface MenuTemplateItem {
  readonly id?: string;
  readonly label?: string;
  readonly role?: string;
  readonly accelerator?: string;
  readonly submenu?: readonly MenuTemplateItem[];
  click?(): void;
}
export const Menu = {
  current: [] as readonly MenuTemplateItem[],
  buildFromTemplate: (template: readonly MenuTemplateItem[]): readonly MenuTemplateItem[] => template,
  setApplicationMenu(menu: readonly MenuTemplateItem[]): void {
    this.current = menu;
  },
};

export const nativeTheme = Object.assign(new EventEmitter(), { shouldUseDarkColors: false, themeSource: 'system' });
export const screen = {
  getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }],
};
