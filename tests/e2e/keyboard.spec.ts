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

  // Parts list: type its name, Enter, choose a place.
  await page.keyboard.press('Alt+p');
  await expect(page.getByRole('listbox', { name: /^Parts/ }).locator(':focus')).toHaveCount(1);
  await page.keyboard.type('AIS rec');
  await expect(page.getByRole('option', { name: /^AIS receiver/ })).toBeFocused();
  await page.keyboard.press('Enter');
  const adding = page.getByRole('dialog', { name: 'Add a part' });
  await expect(adding).toBeVisible();
  await page.keyboard.type('Companion');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await adding.getByRole('button', { name: 'Add', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await projectOf(page)).items.length).toBe(before.items.length + 1);
  const added = (await projectOf(page)).items.at(-1);
  expect(added?.partId).toBe('radio-ais-receiver');

  // Move it with the arrows in the drawing.
  await expect(adding).toHaveCount(0);
  await page.keyboard.press('Alt+d');
  await expect(page.getByRole('application', { name: /^Drawing of/ })).toBeFocused();
  await page.keyboard.press('ArrowUp');
  await expect
    .poll(async () => (await projectOf(page)).items.at(-1)?.position.zM)
    .toBeCloseTo((added?.position.zM ?? 0) + 0.1, 5);

  // Connect: from its supply to the first port that fits.
  await page.keyboard.press('c');
  const dialog = page.getByRole('dialog', { name: 'Connect' });
  await expect(dialog).toBeVisible();
  for (const [label, wanted] of [
    ['From port', /supply/i],
    ['To port', /^B7.*output/i],
  ] as const) {
    await dialog.getByRole('button', { name: new RegExp(label) }).focus();
    await page.keyboard.press('Enter');
    const list = page.locator('.react-aria-Popover');
    await list.getByRole('option', { name: wanted }).first().focus();
    await page.keyboard.press('Enter');
    await expect(list).toHaveCount(0);
  }
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
  await page.keyboard.press('Control+e');
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

test('insert a joint into a run and bend a route, by keyboard alone', async ({ page }) => {
  const before = await projectOf(page);
  await page.keyboard.press('Alt+o');
  const row = page.getByRole('row', { name: /^W06 / });
  await row.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('r');
  const route = page.getByRole('dialog', { name: 'Edit route' });
  await route.getByRole('button', { name: 'Add a bend in the middle' }).focus();
  await page.keyboard.press('Enter');
  const bends = (project: typeof before) => project.runs.find(({ id }) => id === 'w06')?.via ?? [];
  await expect.poll(async () => bends(await projectOf(page)).length).toBe(bends(before).length + 1);
  const height = route.getByRole('textbox', { name: 'z' }).first();
  await height.focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.type('1,25');
  await page.keyboard.press('Enter');
  await expect.poll(async () => bends(await projectOf(page))[0]?.position.zM).toBe(1.25);
  await page.keyboard.press('Escape');
  await expect(route).toHaveCount(0);

  await page.keyboard.press('i');
  const insert = page.getByRole('dialog', { name: /^Insert/ });
  await insert.getByRole('button', { name: /Part/ }).focus();
  await page.keyboard.press('Enter');
  const list = page.locator('.react-aria-Popover');
  await list.getByRole('option', { name: /^Joint, N pair/ }).focus();
  await page.keyboard.press('Enter');
  await expect(list).toHaveCount(0);
  await insert.getByRole('button', { name: 'Insert', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await projectOf(page)).runs.length).toBe(before.runs.length + 1);
  for (let i = 0; i < 3; i += 1) await page.keyboard.press('Control+z');
  await expect.poll(() => projectOf(page)).toEqual(before);
});
