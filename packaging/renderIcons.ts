import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { ROOT } from '../electron/node/paths.ts';
import { CHROMIUM_FLAGS, findChromium } from '../tests/e2e/chromium.ts';
import { type IconPicture, icnsOf, icoOf } from './iconFiles.ts';

// `npm run icons`: renders the drawings in assets/icons to the pictures that each system's installer wants. What it writes
// is part of the repository, because another Chromium may round an edge otherwise.

const DRAWINGS = resolve(ROOT, 'assets/icons');
const RESOURCES = resolve(import.meta.dirname, 'resources');

const WINDOWS_PX = [16, 24, 32, 48, 64, 128, 256];
const MACOS_PX = [32, 64, 128, 256, 512, 1024];
const LINUX_PX = [16, 24, 32, 48, 64, 128, 256, 512];
/** Up to here the drawing on whole pixels is the clearer one. */
const SMALL_PX = 24;
/** macOS leaves a margin around an icon's body: 100 of 1024 pixels on each side (Apple's template; from memory). */
const MACOS_MARGIN = 100 / 1024;

async function render(browser: Browser, svg: string, sizePx: number, margin: number): Promise<IconPicture> {
  const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx } });
  const inner = sizePx * (1 - 2 * margin);
  await page.setContent(
    `<style>html,body{margin:0;background:transparent}svg{position:absolute;left:${sizePx * margin}px;top:${sizePx * margin}px;width:${inner}px;height:${inner}px}</style>${svg}`,
  );
  const png = await page.screenshot({ omitBackground: true });
  await page.close();
  return { sizePx, png };
}

async function main(): Promise<void> {
  const executablePath = findChromium();
  if (executablePath === null)
    throw new Error('Rendering the icons needs a Chromium: install one or name it in CHROMIUM_PATH.');
  const drawing = (name: string): Promise<string> => readFile(resolve(DRAWINGS, `${name}.svg`), 'utf8');
  const [program, small, document] = await Promise.all(['backstay', 'backstay-small', 'document'].map(drawing));
  if (program === undefined || small === undefined || document === undefined) return;
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_FLAGS });
  const set = (svg: string, sizes: readonly number[], margin: number, smallSvg = svg): Promise<IconPicture[]> =>
    Promise.all(sizes.map((px) => render(browser, px <= SMALL_PX ? smallSvg : svg, px, margin)));

  await mkdir(resolve(RESOURCES, 'icons'), { recursive: true });
  const write = (name: string, bytes: Buffer): Promise<void> => writeFile(resolve(RESOURCES, name), bytes);
  for (const { sizePx, png } of await set(program, LINUX_PX, 0, small))
    await write(`icons/${sizePx}x${sizePx}.png`, png);
  await write('icon.ico', icoOf(await set(program, WINDOWS_PX, 0, small)));
  await write('icon.icns', icnsOf(await set(program, MACOS_PX, MACOS_MARGIN)));
  await write('backstay.ico', icoOf(await set(document, WINDOWS_PX, 0)));
  await write('backstay.icns', icnsOf(await set(document, MACOS_PX, 0)));
  await browser.close();
}

await main();
