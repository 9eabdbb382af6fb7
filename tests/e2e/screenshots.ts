import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { buildWhatIsStale } from '../../electron/node/build.ts';
import { RENDERER_DIST, ROOT } from '../../electron/node/paths.ts';
import { serveRenderer } from '../../electron/node/serve.ts';
import { CHROMIUM_FLAGS, findChromium } from './chromium.ts';

// `npm run screenshots`: remakes the pictures of README and user guide from the app itself.

interface Picture {
  readonly name: string;
  readonly theme: 'light' | 'dark';
  readonly size: readonly [number, number];
  readonly demo?: string;
  readonly tab: string;
  readonly prepare?: (page: Page) => Promise<void>;
}

const SMALL = [1280, 800] as const;
const LARGE = [1920, 1080] as const;

const failMast = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Main mast lost', exact: true }).click();
};

const chooseRadio = (name: RegExp) => async (page: Page) => {
  const panel = page.getByRole('tabpanel', { name: 'Range' });
  await panel.getByRole('button').first().click();
  await page.getByRole('option', { name }).click();
};

const PICTURES: readonly Picture[] = [
  { name: 'main', theme: 'light', size: LARGE, tab: 'Path loss' },
  { name: 'failure', theme: 'light', size: LARGE, tab: 'Redundancy', prepare: failMast },
  { name: 'range', theme: 'light', size: SMALL, tab: 'Range' },
  { name: 'hf', theme: 'light', size: LARGE, tab: 'Range', prepare: chooseRadio(/^HF-1 by/) },
  { name: 'sky', theme: 'dark', size: LARGE, tab: 'Range', prepare: chooseRadio(/^SAT-1 by/) },
  { name: 'findings', theme: 'light', size: SMALL, tab: 'Findings', demo: 'Pelluna' },
  { name: 'dark', theme: 'dark', size: LARGE, tab: 'Findings', demo: 'Vessarine' },
  { name: 'sheet', theme: 'light', size: SMALL, tab: 'Install sheet', demo: 'Vessarine' },
];

const folder = join(ROOT, 'docs/pictures');
mkdirSync(folder, { recursive: true });
const executablePath = findChromium();
if (executablePath === null) throw new Error('No Chromium found: install one, or name it in CHROMIUM_PATH.');
await buildWhatIsStale();
const { server, address } = await serveRenderer(RENDERER_DIST, 0);
const browser = await chromium.launch({ executablePath, args: CHROMIUM_FLAGS });
for (const { name, theme, size, demo, tab, prepare } of PICTURES) {
  const page = await browser.newPage({ viewport: { width: size[0], height: size[1] }, colorScheme: theme });
  // With the test hook the tour of a first start stays away.
  await page.goto(`${address}?test=1`);
  await page.getByRole('tab', { name: tab, exact: true }).click();
  if (demo) {
    await page.getByRole('button', { name: 'Commands' }).click();
    await page.keyboard.type(`open demo: ${demo}`);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: new RegExp(demo) }).waitFor();
  }
  await prepare?.(page);
  await page.waitForTimeout(600);
  await page.screenshot({ path: join(folder, `${name}.png`) });
  await page.close();
}
await browser.close();
server.close();
console.log(`${PICTURES.length} pictures in docs/pictures.`);
