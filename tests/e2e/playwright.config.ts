import { randomUUID } from 'node:crypto';
import { defineConfig } from '@playwright/test';
import { CHROMIUM_FLAGS, findChromium } from './chromium.ts';

const executablePath = findChromium();
// Workers read this file again and must come to the same address.
process.env.BACKSTAY_TOKEN ??= randomUUID();
const address = `http://127.0.0.1:4790/${process.env.BACKSTAY_TOKEN}/`;

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  timeout: 90_000,
  expect: { timeout: 15_000 },
  workers: 2,
  fullyParallel: true,
  // A loaded machine may miss a gesture once; a test that needs its second try is listed as flaky.
  retries: process.env.CI ? 1 : 0,
  outputDir: '../../test-results',
  use: {
    baseURL: address,
    viewport: { width: 1280, height: 800 },
    launchOptions: { args: CHROMIUM_FLAGS, ...(executablePath === null ? {} : { executablePath }) },
  },
  webServer: {
    // The browser host itself, as `npm start` serves it.
    command: 'npm start -- --browser',
    cwd: '../..',
    env: { BACKSTAY_PORT: '4790', BACKSTAY_TOKEN: process.env.BACKSTAY_TOKEN },
    url: address,
    timeout: 180_000,
    reuseExistingServer: false,
  },
});
