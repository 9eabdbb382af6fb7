import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { TOUR_STEPS } from '../../renderer/welcome/tourSteps.ts';
import { dragFile } from './browserDisk.ts';
import { giveBridge } from './fakeBridge.ts';
import { panelTab } from './support.ts';

// The first start, the tour, the help and About.

const tour = (page: Page) => page.getByRole('region', { name: 'Tour' });

async function start(page: Page): Promise<void> {
  await page.goto('./');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
}

async function expectNoViolation(page: Page, where: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
  const words = serious.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${where}: ${id}: ${target.join(' ')}`));
  expect(words).toEqual([]);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow, where).toBeLessThanOrEqual(0);
}

test('the tour comes at the first start, points at real parts of the screen, and not again', async ({ page }) => {
  await start(page);
  for (const [i, { title, target }] of TOUR_STEPS.entries()) {
    await expect(tour(page).getByRole('heading')).toHaveText(title);
    await expect(tour(page)).toContainText(`${i + 1} of ${TOUR_STEPS.length}`);
    await expect(tour(page)).toBeInViewport({ ratio: 1 });
    const part = await page.locator(target).first().boundingBox();
    const ring = await page.locator('.tour-ring').boundingBox();
    expect(ring).toEqual(part);
    expect((part?.width ?? 0) * (part?.height ?? 0)).toBeGreaterThan(500);
    if (i === 2) {
      await page.keyboard.press('ArrowLeft');
      await expect(tour(page).getByRole('heading')).toHaveText(TOUR_STEPS[1]?.title ?? '');
      await page.keyboard.press('ArrowRight');
    }
    await page.keyboard.press('ArrowRight');
  }
  await expect(tour(page)).toHaveCount(0);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.waitForTimeout(500);
  await expect(tour(page)).toHaveCount(0);
});

test('the tour stops no work, Escape skips it, and Help brings it back', async ({ page }) => {
  await start(page);
  await expect(tour(page)).toBeVisible();
  // Work goes on under it, by pointer and by key, and the tour stays where it was.
  await panelTab(page, 'Findings').click();
  await expect(panelTab(page, 'Findings')).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('ArrowLeft');
  await expect(panelTab(page, 'Redundancy')).toHaveAttribute('aria-selected', 'true');
  await expect(tour(page)).toContainText('1 of 6');
  await tour(page).getByRole('button', { name: 'Next' }).click();
  await page.keyboard.press('Escape');
  await expect(tour(page)).toHaveCount(0);
  await page.getByRole('button', { name: 'Help', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Take the tour' }).click();
  await expect(tour(page)).toContainText('1 of 6');
  await tour(page).getByRole('button', { name: 'Skip the tour' }).click();
  await expect(tour(page)).toHaveCount(0);
});

test('the help opens at the page shown, and is searched without a network', async ({ page, context }) => {
  await start(page);
  await page.keyboard.press('Escape');
  await panelTab(page, 'Redundancy').click();
  await page.getByRole('button', { name: 'Help on this page' }).click();
  const help = page.getByRole('dialog', { name: 'Help' });
  await expect(help.getByRole('heading', { name: /See what failures take away/ })).toBeVisible();
  await context.setOffline(true);
  await help.getByRole('searchbox', { name: 'Search the help' }).fill('overhead lines');
  await expect(help.getByRole('option')).toHaveCount(1);
  await expect(help.getByRole('article').locator('mark').first()).toHaveText(/overhead/i);
  await help.getByRole('searchbox').fill('no such words anywhere');
  await expect(help).toContainText('No page has all of these words');
  await help.getByRole('searchbox').fill('');
  await help.getByRole('option', { name: 'Keys' }).click();
  await expect(help.getByRole('row', { name: /^Undo/ })).toContainText('Ctrl+Z');
});

test('About tells the version, sends nothing, and lists the licences of what is shipped', async ({ page }) => {
  const elsewhere: string[] = [];
  page.on('request', (request) => {
    if (!request.url().startsWith('http://127.0.0.1:') && !request.url().startsWith('data:'))
      elsewhere.push(request.url());
  });
  await start(page);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Help', exact: true }).click();
  await page.getByRole('menuitem', { name: 'About Backstay' }).click();
  const about = page.getByRole('dialog', { name: 'About Backstay' });
  await expect(about).toContainText(/Version \d+\.\d+\.\d+/);
  await expect(about).toContainText('no telemetry');
  await about.getByRole('searchbox', { name: 'Search the licences' }).fill('react');
  const react = about.getByRole('listitem').filter({ hasText: /^react / });
  await expect(react).toContainText('MIT');
  await react.locator('summary').click();
  await expect(react).toContainText('Permission is hereby granted');
  expect(elsewhere).toEqual([]);
});

const PELLUNA = readFileSync(resolve(import.meta.dirname, '../../assets/demo/pelluna.backstay'), 'utf8');
const RECENTS = [
  { id: 'r1', name: 'pelluna.backstay', folder: 'boats', lastUsed: '2026-05-03T10:00:00Z', missing: false },
  { id: 'r2', name: 'gone.backstay', folder: 'stick', lastUsed: '2026-05-01T10:00:00Z', missing: true },
];

test('on the desktop the files used last are offered at the start and in the File menu', async ({ page }) => {
  await giveBridge(page, RECENTS, PELLUNA);
  await start(page);
  const card = page.getByRole('region', { name: 'Go on with' });
  await expect(card.getByRole('button', { name: /^gone\.backstay/ })).toContainText('Not there now');
  await expectNoViolation(page, 'files used last');
  await card.getByRole('button', { name: /^gone\.backstay/ }).click();
  await expect(page.getByRole('status').first()).toContainText('gone.backstay is not there now.');
  await card.getByRole('button', { name: /^pelluna\.backstay/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Pelluna');
  await expect(card).toHaveCount(0);

  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Open recent' }).click();
  await expect(page.getByRole('menuitem', { name: /^gone\.backstay/ })).toContainText('Not there now');
  await page.getByRole('menuitem', { name: 'Clear this list' }).click();
  await expect(page.getByRole('status').first()).toContainText('The list of recent files is empty');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await expect(page.getByRole('menuitem', { name: /^Open…/ })).toBeVisible();
  await expect(page.getByRole('menuitem', { name: 'Open recent' })).toHaveCount(0);
  await page.keyboard.press('Escape');

  await page.getByRole('button', { name: 'Help', exact: true }).click();
  await page.getByRole('menuitem', { name: 'About Backstay' }).click();
  const about = page.getByRole('dialog', { name: 'About Backstay' });
  await expect(about).toContainText('Version 9.8.7, Electron 45.5.0, Chromium 140');
  await about.getByRole('button', { name: 'Show the log file' }).click();
  expect(await page.evaluate(() => window.__asked)).toContain('showLog');
});

test('an edit ends the start, and the card with it', async ({ page }) => {
  await giveBridge(page, RECENTS, PELLUNA);
  await start(page);
  const card = page.getByRole('region', { name: 'Go on with' });
  await expect(card).toBeVisible();
  await page.keyboard.press('Alt+d');
  await page.keyboard.press('Control+a');
  await page.keyboard.press('ArrowUp');
  await expect(card).toHaveCount(0);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`no serious accessibility violation in tour, help, About, questions and broken files, ${colorScheme}`, async ({
    page,
  }) => {
    test.slow();
    await page.emulateMedia({ colorScheme });
    await start(page);
    await expect(tour(page)).toBeVisible();
    await expectNoViolation(page, 'tour');
    await page.keyboard.press('Escape');

    await page.keyboard.press('Shift+F1');
    await page.getByRole('searchbox', { name: 'Search the help' }).fill('mast');
    await expectNoViolation(page, 'help');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);

    await page.getByRole('button', { name: 'Help', exact: true }).click();
    await page.getByRole('menuitem', { name: 'About Backstay' }).click();
    await expect(page.getByRole('region', { name: 'Licences' })).toBeVisible();
    await expectNoViolation(page, 'About');
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);

    await dragFile(page, 'broken.backstay', '{"format": "backstay", oops');
    await expect(page.getByRole('dialog')).toBeVisible();
    await expectNoViolation(page, 'broken file');
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);

    await page.keyboard.press('Alt+d');
    await page.keyboard.press('Control+a');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Control+k');
    await page.keyboard.type('open demo: Pell');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('alertdialog')).toBeVisible();
    await expectNoViolation(page, 'question');
  });
}
