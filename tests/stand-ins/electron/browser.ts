import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page, type Route } from 'playwright-core';
import { CHROMIUM_FLAGS, findChromium } from '../../e2e/chromium.ts';
import { app, protocol, session, userData } from './app.ts';
import { invoke, pack, unpack } from './ipc.ts';
import { PAGE_SIDE } from './page.ts';

/**
 * Chromium knows no scheme of ours, so pages live at this address, which nothing on any network has: every request of
 * theirs is answered or refused here. To main they are `app:` addresses.
 */
const STAND_IN_ORIGIN = 'https://backstay.stand-in';
const APP_ORIGIN = 'app://backstay';

export const toStandIn = (url: string): string => url.replace(APP_ORIGIN, STAND_IN_ORIGIN);
export const fromStandIn = (url: string): string => url.replace(STAND_IN_ORIGIN, APP_ORIGIN);

const PROFILE = join(userData, 'chromium');
const PORT_FILE = join(PROFILE, 'DevToolsActivePort');
/** What a page might ask leave for, by Chromium's names. */
const PERMISSIONS = ['geolocation', 'notifications', 'camera', 'microphone', 'clipboard-read', 'clipboard-write'];

/** What owns a page: decides about its navigations, and is the sender of its calls. */
export interface PageOwner {
  mayNavigate(url: string): boolean;
  callEvent(isMainFrame: boolean, url: string): unknown;
}
export const owners = new Map<Page, PageOwner>();

let starting: Promise<BrowserContext> | null = null;
let blank: Page | null = null;

/** The one browser, started when the first window wants it. */
function browser(): Promise<BrowserContext> {
  starting ??= start();
  return starting;
}

async function start(): Promise<BrowserContext> {
  // Left behind by a killed process, it would name a port nobody listens on.
  rmSync(PORT_FILE, { force: true });
  const executablePath = findChromium();
  if (executablePath === null) throw new Error('No Chromium found: install one, or name it in CHROMIUM_PATH.');
  const context = await chromium.launchPersistentContext(PROFILE, {
    executablePath,
    // The test looks at the pages through a connection of its own.
    args: [...CHROMIUM_FLAGS, '--remote-debugging-port=0'],
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
  });
  app.beforeExit.push(() => context.close());
  blank = context.pages()[0] ?? null;
  await context.grantPermissions(PERMISSIONS.filter((name) => session.defaultSession.grants(name)));
  await context.exposeBinding(`${PAGE_SIDE}Invoke`, async ({ page, frame }, channel: string, sent: string) => {
    const event = owners.get(page)?.callEvent(frame === page.mainFrame(), fromStandIn(frame.url()));
    return pack(await invoke(channel, event, unpack(sent) as unknown[]));
  });
  await context.route('**/*', answer);
  return context;
}

/** Where Chromium listens for the test's own connection; null until it does. */
export function debuggingPort(): number | null {
  return starting !== null && existsSync(PORT_FILE) ? Number(readFileSync(PORT_FILE, 'utf8').split('\n')[0]) : null;
}

/** A page of the program's own; the one Chromium began with goes when there is another. */
export async function newPage(): Promise<Page> {
  const context = await browser();
  const page = await context.newPage();
  await blank?.close();
  blank = null;
  return page;
}

/** Answers a request of a page as the real runtime would: asks about navigations, then about the network, then serves. */
async function answer(route: Route): Promise<void> {
  const request = route.request();
  const url = fromStandIn(request.url());
  const page = request.frame().page();
  const isMainFrame = request.frame() === page.mainFrame();
  if (request.isNavigationRequest() && isMainFrame && owners.get(page)?.mayNavigate(url) !== true) {
    return route.abort('aborted');
  }
  const handler = protocol.handlers.get(new URL(url).protocol.replace(':', ''));
  if (!session.defaultSession.mayLoad(url) || !handler) return route.abort('blockedbyclient');
  const response = await handler(new Request(url, { method: request.method() }));
  await route.fulfill({
    status: response.status,
    headers: Object.fromEntries(response.headers),
    body: Buffer.from(await response.arrayBuffer()),
  });
}
