import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { PANELS, REDUNDANCY_VIEWS } from '../../electron/main/menuEntries.ts';
import { hostileText } from '../unit/electron/hostile.ts';
import { type Desktop, firstPage, RUNTIMES } from './desktop.ts';

// A document whose every free text is markup that would run, shown on every page of the program and exported.

const MARKUP = '<img src=x onerror="globalThis.hostileRan=1"><script>globalThis.hostileRan=1</script>';
const LINK = '<a href="javascript:globalThis.hostileRan=1">[x](javascript:globalThis.hostileRan=1)</a>';

/** Starts to write down whatever the page's policy stops: nothing of ours ever tries. */
async function watch(page: Page): Promise<void> {
  await page.evaluate(() => {
    const stopped: string[] = [];
    Object.assign(globalThis, { hostileStopped: stopped });
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => stopped.push(effectiveDirective));
  });
}

const found = (page: Page) =>
  page.evaluate(() => ({
    ran: 'hostileRan' in globalThis,
    stopped: (globalThis as unknown as { hostileStopped: string[] }).hostileStopped,
    elements: document.querySelectorAll('img[src="x"], a[href^="javascript" i], body script, [onerror], [onload]')
      .length,
  }));
const NOTHING = { ran: false, stopped: [], elements: 0 };

async function exported(desktop: Desktop, command: string, path: string): Promise<string> {
  await desktop.answerNext('showSaveDialog', { canceled: false, filePath: path });
  await desktop.clickMenu(command);
  await expect.poll(() => readFileSync(path, { encoding: 'utf8', flag: 'a+' }).length).toBeGreaterThan(0);
  return readFileSync(path, 'utf8');
}

for (const { name, test, missing } of RUNTIMES) {
  test.describe(`hostile documents on ${name}`, () => {
    test.skip(missing !== null, missing ?? '');

    test('script in every text field runs nowhere: every panel, list, dialog and question', async ({
      start,
      folder,
    }) => {
      const path = join(folder, `a'b&c;$(touch pwned)<img src=x>.backstay`);
      writeFileSync(
        path,
        hostileText((index) => `${MARKUP}${LINK} ${index}`),
      );
      const desktop = await start();
      const page = await firstPage(desktop);
      await watch(page);
      await desktop.answerNext('showOpenDialog', { canceled: false, filePaths: [path] });
      await desktop.clickMenu('open');
      await expect(page.getByRole('heading', { level: 1 })).toContainText('<img src=x');
      for (const { command } of [...PANELS, ...REDUNDANCY_VIEWS]) {
        await desktop.clickMenu(command);
        await page.waitForTimeout(150);
        expect(await found(page), command).toEqual(NOTHING);
      }
      await desktop.clickMenu('outline');
      const rows = page.getByRole('treegrid').getByRole('row');
      for (let index = 1; index < Math.min(20, await rows.count()); index += 3) {
        await rows.nth(index).click();
        await desktop.clickMenu('panel-particulars');
      }
      await page.keyboard.press('Control+A');
      for (const command of ['palette', 'add-part', 'keep-copy', 'settings', 'help', 'recoveries', 'about']) {
        await desktop.clickMenu(command);
        await page.waitForTimeout(200);
        expect(await found(page), command).toEqual(NOTHING);
        await page.keyboard.press('Escape');
      }
    });

    test('markup that does get into the page is seen by these tests, and still does not run', async ({ start }) => {
      const desktop = await start();
      const page = await firstPage(desktop);
      await watch(page);
      await page.evaluate((markup) => {
        const script = Object.assign(document.createElement('script'), { textContent: 'globalThis.hostileRan=1' });
        document.body.insertAdjacentHTML('beforeend', markup);
        document.body.append(script);
      }, MARKUP + LINK);
      await page
        .locator('a[href^="javascript"]')
        .first()
        .evaluate((link: HTMLElement) => link.click());
      await expect.poll(async () => (await found(page)).stopped.length).toBeGreaterThan(1);
      expect(await found(page)).toMatchObject({ ran: false });
      expect((await found(page)).elements).toBeGreaterThan(2);
    });

    test('a name in a document names no place to write to, and its texts stay texts in an export', async ({
      start,
      folder,
    }) => {
      const path = join(folder, 'boat.backstay');
      writeFileSync(
        path,
        hostileText((index) => `../../../${MARKUP} ${index}`),
      );
      const desktop = await start({ files: [path] });
      const page = await firstPage(desktop);
      await expect(page.getByRole('heading', { level: 1 })).toContainText('<img src=x');
      const svg = await exported(desktop, 'export-svg', join(folder, 'drawing.svg'));
      const inside = await page.evaluate((text) => {
        const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
        const all = [...parsed.querySelectorAll('*')];
        return {
          isWhole: parsed.querySelector('parsererror') === null,
          names: all.map(({ localName }) => localName),
          attributes: all.flatMap((element) => element.getAttributeNames()),
        };
      }, svg);
      expect(inside.isWhole).toBe(true);
      expect(inside.names).not.toContain('img');
      expect(inside.names).not.toContain('script');
      expect(inside.attributes.filter((attribute) => attribute.startsWith('on'))).toEqual([]);
      const suggested = (await desktop.asked()).flatMap(({ method, options }) =>
        method === 'showSaveDialog' && typeof options === 'object' ? [String(options.defaultPath)] : [],
      );
      expect(suggested).toHaveLength(1);
      expect(suggested[0]).not.toMatch(/[/\\<>]/);
    });
  });
}
