import { expect, test } from '@playwright/test';
import { openApp, panelTab, projectOf } from './support.ts';

// The main job again without a pointer: every step is a key.

test.beforeEach(({ page }) => openApp(page));

test('add a part, connect it, move it, undo, read a failure and export, by keyboard alone', async ({
  page,
  browserName,
}) => {
  expect(browserName).toBe('chromium');
  const before = await projectOf(page);

  // Parts list: find, Enter, take the usual place.
  await page.keyboard.press('Alt+p');
  await page.keyboard.type('AIS receiver');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog', { name: 'Add a part' })).toBeVisible();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Tab');
  await page.getByRole('dialog', { name: 'Add a part' }).getByRole('button', { name: 'Add', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await projectOf(page)).items.length).toBe(before.items.length + 1);
  const added = (await projectOf(page)).items.at(-1);
  expect(added?.partId).toBe('radio-ais-receiver');

  // Move it with the arrows in the drawing.
  await page.keyboard.press('Alt+d');
  await page.keyboard.press('ArrowUp');
  await expect
    .poll(async () => (await projectOf(page)).items.at(-1)?.position.zM)
    .toBeCloseTo((added?.position.zM ?? 0) + 0.1, 5);

  // Connect: from its supply to the first port that fits.
  await page.keyboard.press('c');
  const dialog = page.getByRole('dialog', { name: 'Connect' });
  await expect(dialog).toBeVisible();
  await dialog.getByRole('button', { name: /From port/ }).focus();
  await page.keyboard.press('Enter');
  await page
    .getByRole('option', { name: /supply/i })
    .first()
    .focus();
  await page.keyboard.press('Enter');
  await dialog.getByRole('button', { name: /To port/ }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('option').first().focus();
  await page.keyboard.press('Enter');
  await dialog.getByRole('button', { name: 'Connect' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await projectOf(page)).feeds.length).toBe(before.feeds.length + 1);

  // Undo all of it.
  for (let i = 0; i < 3; i += 1) await page.keyboard.press('Control+z');
  await expect.poll(() => projectOf(page)).toEqual(before);

  // Read a failure.
  await page.keyboard.press('Alt+4');
  await page.getByRole('button', { name: 'House bank flat', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('status').filter({ hasText: 'House bank flat' })).toBeVisible();
  await page.keyboard.press('Enter');

  // Export.
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+p');
  expect((await download).suggestedFilename()).toMatch(/install-sheet\.pdf$/);
});

test('the outline mirrors the drawing and carries the selection', async ({ page }) => {
  await page.keyboard.press('Alt+o');
  const outline = page.getByRole('treegrid', { name: 'Outline of the drawing' });
  await expect(outline.getByRole('row', { name: /^\d+ VHF-1,/ })).toBeVisible();
  const { items, runs } = await projectOf(page);
  for (const { tag } of items)
    await expect(outline.getByRole('row', { name: new RegExp(`^\\d+ ${tag}, `) })).toHaveCount(1);
  for (const { number } of runs)
    await expect(outline.getByRole('row', { name: new RegExp(`^${number} `) })).toHaveCount(1);
  await outline.getByRole('row', { name: /^\d+ VHF-1,/ }).click();
  await panelTab(page, 'Particulars').click();
  await expect(page.getByRole('tabpanel', { name: 'Particulars' })).toContainText('VHF-1');
});
