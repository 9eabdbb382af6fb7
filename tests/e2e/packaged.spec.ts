import { type ChildProcess, execFileSync, fork } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { extractAll } from '@electron/asar';
import { expect, type Page, test } from '@playwright/test';
import { chromium } from 'playwright-core';
import { ROOT } from '../../electron/node/paths.ts';

// The program as it is packed, taken out of the archive far from the checkout and started on the stand-in for Electron: the
// boat of a document comes up, and so do the licences, from nothing but what is shipped.

const REGISTER = join(ROOT, 'tests/stand-ins/electron/register.mjs');
const PATIENCE_MS = 60_000;

const work = mkdtempSync(join(tmpdir(), 'backstay-packaged-'));
const program = join(work, 'program');
let child: ChildProcess | null = null;

test.beforeAll(() => {
  test.setTimeout(180_000);
  const out = join(work, 'out');
  execFileSync('npx', ['tsx', 'packaging/pack.ts', '--stand-in', '--out', out], { cwd: ROOT, stdio: 'pipe' });
  extractAll(join(out, 'linux-unpacked/resources/app.asar'), program);
});

test.afterAll(async () => {
  if (child?.exitCode === null) {
    const gone = once(child, 'exit');
    child.disconnect(); // the stand-in ends itself and its browser with its parent
    await gone;
  }
  rmSync(work, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
});

/** Asks the stand-in for the port of its browser until it has one. */
async function debuggingPort(started: ChildProcess): Promise<number> {
  let port: number | null = null;
  started.on('message', ({ value }: { value?: number | null }) => {
    port ??= value ?? null;
  });
  await expect
    .poll(
      () => {
        started.send({ id: 1, name: 'debuggingPort', given: [] });
        return port;
      },
      { timeout: PATIENCE_MS },
    )
    .not.toBeNull();
  return port ?? 0;
}

async function startPackaged(file: string): Promise<Page> {
  child = fork(join(program, 'dist/electron/main.js'), [`--user-data-dir=${join(work, 'profile')}`, file], {
    cwd: ROOT,
    execArgv: ['--import', 'tsx', '--import', REGISTER],
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${await debuggingPort(child)}`);
  const shown = (): Page | undefined =>
    browser
      .contexts()
      .flatMap((context) => context.pages())
      .find((page) => page.url().startsWith('https://backstay.'));
  await expect.poll(() => shown() !== undefined, { timeout: PATIENCE_MS }).toBe(true);
  const page = shown();
  if (page === undefined) throw new Error('the window has gone again');
  return page;
}

test('the packed program opens a document and draws its boat, from the archive alone', async () => {
  const file = join(work, 'pelluna.backstay');
  copyFileSync(join(ROOT, 'assets/demo/pelluna.backstay'), file);
  const page = await startPackaged(file);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Pelluna');
  await expect(page.locator('canvas').first()).toBeVisible();
  const licences = await page.evaluate(async () => (await fetch('./licences.json')).json());
  expect(licences[0]).toMatchObject({ name: 'Backstay', licence: 'MIT' });
  expect(licences.length).toBeGreaterThan(50);
});
