import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type Browser, type CDPSession, chromium, type Page } from 'playwright-core';
import { buildInto } from '../../electron/node/build.ts';
import { DIST } from '../../electron/node/paths.ts';
import { serveRenderer } from '../../electron/node/serve.ts';
import { CHROMIUM_FLAGS, findChromium } from '../e2e/chromium.ts';
import { openDemo, pointOf, projectOf } from '../e2e/support.ts';
import { median } from './timing.ts';

// Start-up and memory of the built page in a headless Chromium, as the browser host serves it. The desktop adds the start of
// its runtime, which cannot be measured here.

const LOADS = 7;
/** As many as the undo list holds (renderer/store/history.ts) and some: only then may the heap be asked to stay level. */
const FILLING_EDITS = 510;
/** Growth of the heap that is still no growth: what the page's own caches breathe between two collections. */
const GROWTH_BOUND_MB = 2;
const SHORT_EDITS = 250;
/** `BENCH_EDIT_MINUTES=10 npm run bench` edits that long instead of a number of edits. */
const EDIT_MINUTES = Number(process.env.BENCH_EDIT_MINUTES ?? 0);

interface Row {
  readonly what: string;
  readonly value: string;
  readonly note: string;
}

const kb = (bytes: number): string => `${(bytes / 1000).toFixed(0)} kB`;
const mb = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

/** What the page must fetch before it can show anything: its scripts and style sheets, from its own markup. */
function firstLoadRows(renderer: string): Row[] {
  const page = readFileSync(resolve(renderer, 'index.html'), 'utf8');
  const named = [...page.matchAll(/(?:src|href)="\.\/([^"]+\.(?:js|css))"/g)].map((match) => match[1] ?? '');
  return ['js', 'css'].map((kind) => {
    const files = named
      .filter((name) => name.endsWith(`.${kind}`))
      .map((name) => readFileSync(resolve(renderer, name)));
    const bytes = files.reduce((sum, file) => sum + file.length, 0);
    const zipped = files.reduce((sum, file) => sum + gzipSync(file).length, 0);
    return { what: kind === 'js' ? 'first script' : 'style sheet', value: kb(bytes), note: `${kb(zipped)} gzipped` };
  });
}

/** In the page: notes the time at which the drawing first has ink, looking once a frame. */
function watchForInk(): void {
  const sample = document.createElement('canvas');
  sample.width = 64;
  sample.height = 64;
  const context = sample.getContext('2d', { willReadFrequently: true });
  const look = (): void => {
    for (const canvas of document.querySelectorAll('canvas')) {
      if (canvas.width === 0 || context === null) continue;
      context.clearRect(0, 0, 64, 64);
      context.drawImage(canvas, 0, 0, 64, 64);
      const { data } = context.getImageData(0, 0, 64, 64);
      const inks = new Set<number>();
      for (let at = 0; at < data.length; at += 4)
        if ((data[at + 3] ?? 0) > 40)
          inks.add(((data[at] ?? 0) << 16) | ((data[at + 1] ?? 0) << 8) | (data[at + 2] ?? 0));
      // Paper alone is one colour; a boat in ink has many shades along its edges.
      if (inks.size > 12) {
        document.documentElement.dataset.inkAtMs = String(performance.now());
        return;
      }
    }
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

async function loadMs(browser: Browser, address: string): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  // The script loader names functions through a helper of its own, which the page does not have.
  await page.addInitScript({ content: 'globalThis.__name = (named) => named;' });
  await page.addInitScript(watchForInk);
  await page.goto(address);
  await page.waitForFunction(() => document.documentElement.dataset.inkAtMs !== undefined);
  const ms = Number(await page.evaluate(() => document.documentElement.dataset.inkAtMs));
  await context.close();
  return ms;
}

/** Bytes of live objects, after collecting twice: the first collection lets go of what finalisers held. */
async function heapBytes(session: CDPSession): Promise<number> {
  for (let round = 0; round < 2; round += 1) await session.send('HeapProfiler.collectGarbage');
  return (await session.send('Runtime.getHeapUsage')).usedSize;
}

async function dragItem(page: Page, itemId: string, stepPx: number): Promise<void> {
  const from = await pointOf(page, { kind: 'item', id: itemId });
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + stepPx / 2, from.y + stepPx / 3);
  await page.mouse.move(from.x + stepPx, from.y);
  await page.mouse.up();
}

const STEP_PX = 14;

/** Items that a drag there and back really moves: under others, or held to their place, an edit would be none. */
async function movableItems(page: Page): Promise<string[]> {
  const { items } = await projectOf(page);
  const found: string[] = [];
  for (const { id } of items) {
    const states = [JSON.stringify(await projectOf(page))];
    for (const step of [STEP_PX, -STEP_PX]) {
      await dragItem(page, id, step);
      states.push(JSON.stringify(await projectOf(page)));
    }
    if (states[0] !== states[1] && states[1] !== states[2]) found.push(id);
  }
  if (found.length === 0) throw new Error('no item of the demo boat can be dragged');
  return found;
}

/** Edits until told to stop, each item there and back in turn; every fourth edit is undone and done again. */
async function edit(page: Page, items: readonly string[], goOn: (edits: number) => boolean): Promise<number> {
  let edits = 0;
  for (; goOn(edits); edits += 1) {
    const id = items[(edits >> 1) % items.length] ?? '';
    await dragItem(page, id, edits % 2 === 0 ? STEP_PX : -STEP_PX);
    if (edits % 4 !== 3) continue;
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+Shift+z');
  }
  return edits;
}

async function openForEditing(browser: Browser, address: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  const url = new URL(address);
  url.searchParams.set('test', '1');
  await page.goto(url.href);
  await page.waitForFunction(() => window.__backstayTest !== undefined);
  await page.keyboard.press('Escape'); // the tour of a first visit
  await openDemo(page, 'Vessarine');
  return page;
}

async function memoryRows(browser: Browser, address: string): Promise<Row[]> {
  const page = await openForEditing(browser, address);
  const session = await page.context().newCDPSession(page);
  const atStart = await heapBytes(session);
  const items = await movableItems(page);
  const filling = await edit(page, items, (edits) => edits < FILLING_EDITS);
  const full = await heapBytes(session);
  const until = performance.now() + EDIT_MINUTES * 60_000;
  const more = await edit(page, items, (edits) => (EDIT_MINUTES > 0 ? performance.now() < until : edits < SHORT_EDITS));
  const growthMb = ((await heapBytes(session)) - full) / 1e6;
  const verdict = growthMb <= GROWTH_BOUND_MB ? 'kept' : 'BROKEN';
  return [
    { what: 'heap, boat opened', value: mb(atStart), note: 'after collecting' },
    { what: `heap after ${filling} edits`, value: mb(full), note: 'the undo list is full' },
    {
      what: `heap after ${more} edits more`,
      value: mb(full + growthMb * 1e6),
      note: `growth ${growthMb.toFixed(1)} MB, bound ${GROWTH_BOUND_MB} MB: ${verdict}`,
    },
  ];
}

/** Prints the section of `npm run bench`; says by name that it is left out where there is no Chromium. */
export async function printStartup(): Promise<void> {
  const executablePath = findChromium();
  if (executablePath === null) {
    console.log('Start-up and memory SKIPPED: no Chromium found. Install one or name it in CHROMIUM_PATH.');
    return;
  }
  const program = resolve(DIST, 'bench/program');
  await buildInto(program);
  const renderer = resolve(program, 'renderer');
  const { server, address } = await serveRenderer(renderer, 0);
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_FLAGS });
  try {
    const loads: number[] = [];
    for (let load = 0; load < LOADS; load += 1) loads.push(await loadMs(browser, address));
    const rows: Row[] = [
      ...firstLoadRows(renderer),
      {
        what: 'page load to the drawn boat',
        value: `${Math.min(...loads).toFixed(0)} ms`,
        note: `best of ${LOADS}; median ${median(loads).toFixed(0)} ms`,
      },
      ...(await memoryRows(browser, address)),
    ];
    console.log('Start-up and memory of the page, headless Chromium');
    console.table(Object.fromEntries(rows.map(({ what, value, note }) => [what, { value, note }])));
  } finally {
    await browser.close();
    server.close();
  }
}
