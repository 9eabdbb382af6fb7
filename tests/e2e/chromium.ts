import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Flags for a headless Chromium that may run as root and must not reach for the network. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The browser to test with: CHROMIUM_PATH, the system's, or one Playwright has; null when there is none. */
export function findChromium(): string | null {
  const named = process.env.CHROMIUM_PATH;
  return [...(named ? [named] : []), ...PLACES, chromium.executablePath()].find((path) => existsSync(path)) ?? null;
}
