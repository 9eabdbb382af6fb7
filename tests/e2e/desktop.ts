import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { test as base, expect, type Page } from '@playwright/test';
import { RealDesktop, realRuntime } from './desktopReal.ts';
import { StandInDesktop } from './desktopStandIn.ts';

/** How a dialog of the system's is answered, as Electron would answer it. */
export type DialogMethod = 'showOpenDialog' | 'showSaveDialog' | 'showMessageBox';
export interface Asked {
  readonly method: string;
  readonly options: Readonly<Record<string, unknown>> | string;
}

export interface Start {
  /** The folder of settings, recovery copies and lock; a fresh one unless an earlier start's is named. */
  readonly userData?: string;
  readonly files?: readonly string[];
}

/** A running desktop program, on the stand-in or on the real runtime. */
export interface Desktop {
  readonly userData: string;
  /** Waits for as many windows and answers their pages, the first opened first. */
  pages(count: number): Promise<Page[]>;
  /** Answers the next dialog of this kind; without an answer a dialog is closed. */
  answerNext(method: DialogMethod, answer: Readonly<Record<string, unknown>>): Promise<void>;
  /** What was asked of the user and the system so far. */
  asked(): Promise<readonly Asked[]>;
  clickMenu(id: string): Promise<void>;
  titles(): Promise<readonly string[]>;
  closeWindow(): Promise<void>;
  crashPage(): Promise<void>;
  /** Starts the program a second time on the same profile; resolves when that second process has gone. */
  startAgain(files: readonly string[]): Promise<void>;
  /** Puts a file's path where the preload learns it, as the system does for a dropped file. */
  namePath(page: Page, name: string, path: string): Promise<void>;
  /** Ends the program without any warning to it. */
  kill(): Promise<void>;
  /** Waits until the program has gone of its own accord. */
  gone(): Promise<void>;
}

type Starts = (start?: Start) => Promise<Desktop>;
interface Fixtures {
  readonly start: Starts;
  readonly folder: string;
}

const freshFolder = (): string => mkdtempSync(join(tmpdir(), 'backstay-desktop-'));

/** Tries anew from the top: a browser's last process may still be writing to its profile while that is taken away. */
async function removed(folder: string): Promise<void> {
  for (let tries = 1; ; tries += 1) {
    try {
      return rmSync(folder, { recursive: true, force: true });
    } catch (error) {
      if (tries === 40) throw error;
      await pause(250);
    }
  }
}

/** A test of the desktop program; whatever it starts is ended after it. */
const fixtures = (begin: (start: Required<Start>) => Promise<Desktop>) =>
  base.extend<Fixtures>({
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads which fixtures are needed from the pattern
    folder: async ({}, use) => {
      const folder = freshFolder();
      await use(folder);
      rmSync(folder, { recursive: true, force: true });
    },
    // biome-ignore lint/correctness/noEmptyPattern: as above
    start: async ({}, use) => {
      const started: Desktop[] = [];
      await use(async ({ userData = freshFolder(), files = [] } = {}) => {
        const desktop = await begin({ userData, files });
        started.push(desktop);
        return desktop;
      });
      for (const desktop of started) await desktop.kill();
      for (const { userData } of started) await removed(userData);
    },
  });

/** The same specs on the stand-in, and on the real runtime where it is installed. */
export const RUNTIMES = [
  { name: 'stand-in', test: fixtures((start) => StandInDesktop.begin(start)), missing: null },
  { name: 'Electron', test: fixtures((start) => RealDesktop.begin(start)), missing: realRuntime() },
] as const;

/** The first window, past the tour of a first start. */
export async function firstPage(desktop: Desktop): Promise<Page> {
  const [page] = await desktop.pages(1);
  if (!page) throw new Error('the program has opened no window');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const skip = page.getByRole('button', { name: 'Skip the tour' });
  await skip.click({ timeout: 3000 }).catch(() => {});
  return page;
}
