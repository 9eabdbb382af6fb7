import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { lstatSync, readlinkSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { type Browser, chromium, type Page } from 'playwright-core';
import { DIST, ROOT } from '../../electron/node/paths.ts';
import type { Asked, Desktop, DialogMethod, Start } from './desktop.ts';

const REGISTER = join(ROOT, 'tests/stand-ins/electron/register.mjs');
const MAIN = join(DIST, 'electron/main.js');
const PATIENCE_MS = 30_000;

/** Tries until there is something, or throws. */
async function until<T>(what: string, find: () => Promise<T | null> | T | null): Promise<T> {
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    const found = await find();
    if (found !== null) return found;
    if (Date.now() > end) throw new Error(`waited too long for ${what}`);
    await pause(50);
  }
}

function startProcess({ userData, files }: Required<Start>): ChildProcess {
  return fork(MAIN, [`--user-data-dir=${userData}`, ...files], {
    cwd: ROOT,
    execArgv: ['--import', 'tsx', '--import', REGISTER],
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
}

/** The built program on the stand-in for Electron: a process of its own, looked at through Chromium's debugging port. */
export class StandInDesktop implements Desktop {
  readonly userData: string;
  readonly #process: ChildProcess;
  readonly #waiting = new Map<number, (answer: { value?: unknown; problem?: string }) => void>();
  readonly #pages: Page[] = [];
  #count = 0;
  #browser: Browser | null = null;

  private constructor(userData: string, child: ChildProcess) {
    this.userData = userData;
    this.#process = child;
    child.on('message', (answer: { id: number; value?: unknown; problem?: string }) =>
      this.#waiting.get(answer.id)?.(answer),
    );
  }

  static async begin(start: Required<Start>): Promise<StandInDesktop> {
    return new StandInDesktop(start.userData, startProcess(start));
  }

  async pages(count: number): Promise<Page[]> {
    const browser = await this.#connected();
    return until(`${count} windows`, () => {
      // Kept in the order of their opening, which a debugging connection does not promise.
      const own = browser.contexts().flatMap((context) => context.pages());
      const shown = own.filter((page) => page.url().startsWith('https://backstay.'));
      this.#pages.push(...shown.filter((page) => !this.#pages.includes(page)));
      const open = this.#pages.filter((page) => shown.includes(page));
      return open.length === count ? open : null;
    });
  }

  async #connected(): Promise<Browser> {
    if (this.#browser?.isConnected()) return this.#browser;
    const port = await until('Chromium', () => this.#ask<number | null>('debuggingPort'));
    this.#browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    return this.#browser;
  }

  async answerNext(method: DialogMethod, answer: Readonly<Record<string, unknown>>): Promise<void> {
    await this.#ask('answerNext', method, answer);
  }

  asked(): Promise<readonly Asked[]> {
    return this.#ask('asked');
  }

  async clickMenu(id: string): Promise<void> {
    await this.#ask('clickMenu', id);
  }

  titles(): Promise<readonly string[]> {
    return this.#ask('titles');
  }

  async closeWindow(): Promise<void> {
    await this.#ask('closeWindow');
  }

  async crashPage(): Promise<void> {
    await this.#ask('crashPage');
  }

  async startAgain(files: readonly string[]): Promise<void> {
    const [status] = await once(startProcess({ userData: this.userData, files }), 'exit');
    if (status !== 0) throw new Error(`the second start ended with status ${status}`);
  }

  async namePath(page: Page, name: string, path: string): Promise<void> {
    await page.evaluate(
      (known) => {
        type PageSide = { namePath(name: string, path: string): void };
        (globalThis as unknown as { __electronStandIn: PageSide }).__electronStandIn.namePath(known.name, known.path);
      },
      { name, path },
    );
  }

  async kill(): Promise<void> {
    if (this.#process.exitCode !== null || this.#process.signalCode !== null) return;
    const ended = once(this.#process, 'exit');
    this.#process.kill('SIGKILL');
    await ended;
    await this.#browser?.close().catch(() => {});
    const chromiumPid = this.#chromiumPid();
    if (chromiumPid === null) return;
    // The browser sees its master gone and ends; the next start needs its profile.
    await until('Chromium to end', () => (isAlive(chromiumPid) ? null : true));
  }

  async gone(): Promise<void> {
    if (this.#process.exitCode === null) await once(this.#process, 'exit');
  }

  /** Chromium's process, as the lock of its profile names it. */
  #chromiumPid(): number | null {
    const lock = join(this.userData, 'chromium/SingletonLock');
    if (!lstatSync(lock, { throwIfNoEntry: false })) return null;
    return Number(readlinkSync(lock).split('-').at(-1));
  }

  #ask<T>(name: string, ...given: unknown[]): Promise<T> {
    this.#count += 1;
    const id = this.#count;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, ({ value, problem }) => {
        this.#waiting.delete(id);
        if (problem === undefined) resolve(value as T);
        else reject(new Error(problem));
      });
      this.#process.send({ id, name, given });
    });
  }
}

function isAlive(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}
