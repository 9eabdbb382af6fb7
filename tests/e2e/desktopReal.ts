import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { _electron, type ElectronApplication, type Page } from 'playwright-core';
import { ROOT } from '../../electron/node/paths.ts';
import type { Asked, Desktop, DialogMethod, Start } from './desktop.ts';

const ELECTRON = join(ROOT, 'node_modules/electron');
const FLAGS = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : [];

/** Why the real runtime cannot be tested here, or null when it can. */
export function realRuntime(): string | null {
  if (!existsSync(join(ELECTRON, 'path.txt'))) return 'the Electron runtime is not installed';
  const hasDisplay = process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  return hasDisplay ? null : 'there is no display';
}

const binary = (): string => join(ELECTRON, 'dist', readFileSync(join(ELECTRON, 'path.txt'), 'utf8'));

/** What the program's dialogs answer and were asked, kept in its own main process. */
interface Answering {
  answers: { method: string; answer: unknown }[];
  asked: Asked[];
}

/** The built program on the real runtime, driven through Playwright's own connection to Electron. */
export class RealDesktop implements Desktop {
  readonly userData: string;
  readonly #app: ElectronApplication;

  private constructor(userData: string, app: ElectronApplication) {
    this.userData = userData;
    this.#app = app;
  }

  static async begin({ userData, files }: Required<Start>): Promise<RealDesktop> {
    const args = [...FLAGS, ROOT, `--user-data-dir=${userData}`, ...files];
    const app = await _electron.launch({ executablePath: binary(), args });
    await app.evaluate(({ dialog, shell }) => {
      const state: Answering = { answers: [], asked: [] };
      Object.assign(globalThis, { backstayTest: state });
      const stub = (method: string, closed: (options: { cancelId?: number }) => unknown) => {
        Object.assign(dialog, {
          [method]: async (...given: unknown[]) => {
            const options = given.at(-1) as Record<string, unknown>;
            state.asked.push({ method, options });
            const at = state.answers.findIndex((known) => known.method === method);
            return at < 0 ? closed(options) : state.answers.splice(at, 1)[0]?.answer;
          },
        });
      };
      stub('showOpenDialog', () => ({ canceled: true, filePaths: [] }));
      stub('showSaveDialog', () => ({ canceled: true, filePath: '' }));
      stub('showMessageBox', ({ cancelId = 0 }) => ({ response: cancelId, checkboxChecked: false }));
      for (const method of ['openPath', 'openExternal', 'showItemInFolder']) {
        Object.assign(shell, {
          [method]: async (options: string) => {
            state.asked.push({ method, options });
            return '';
          },
        });
      }
    });
    return new RealDesktop(userData, app);
  }

  async pages(count: number): Promise<Page[]> {
    while (this.#app.windows().length !== count) await pause(50);
    return this.#app.windows();
  }

  async answerNext(method: DialogMethod, answer: Readonly<Record<string, unknown>>): Promise<void> {
    await this.#app.evaluate(
      (_electron, next) => {
        (globalThis as unknown as { backstayTest: Answering }).backstayTest.answers.push(next);
      },
      { method, answer },
    );
  }

  asked(): Promise<readonly Asked[]> {
    return this.#app.evaluate(() => (globalThis as unknown as { backstayTest: Answering }).backstayTest.asked);
  }

  async clickMenu(id: string): Promise<void> {
    await this.#app.evaluate(({ Menu }, wanted) => {
      const item = Menu.getApplicationMenu()?.getMenuItemById(wanted);
      if (!item) throw new Error(`the menu has no entry ${wanted}`);
      item.click();
    }, id);
  }

  titles(): Promise<readonly string[]> {
    return this.#app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().map((window) => window.getTitle()));
  }

  async closeWindow(): Promise<void> {
    await this.#app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().at(-1)?.close());
  }

  async crashPage(): Promise<void> {
    await this.#app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows().at(-1)?.webContents.forcefullyCrashRenderer(),
    );
  }

  async startAgain(files: readonly string[]): Promise<void> {
    const args = [...FLAGS, ROOT, `--user-data-dir=${this.userData}`, ...files];
    await once(spawn(binary(), args, { stdio: 'ignore' }), 'exit');
  }

  /** The system itself knows the path here. */
  async namePath(): Promise<void> {}

  async kill(): Promise<void> {
    const child = this.#app.process();
    if (child.exitCode !== null || child.signalCode !== null) return;
    const ended = once(child, 'exit');
    child.kill('SIGKILL');
    await ended;
  }

  async gone(): Promise<void> {
    if (this.#app.process().exitCode === null) await once(this.#app.process(), 'exit');
  }
}
