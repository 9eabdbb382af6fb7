import { expect, type Page, test } from '@playwright/test';
import { openApp, panelTab, projectOf } from './support.ts';

// What every radio reaches, and why, as a reader tries it out on the range page.

test.beforeEach(async ({ page }) => {
  await openApp(page);
  await panelTab(page, 'Range').click();
});

const panelOf = (page: Page) => page.getByRole('tabpanel', { name: 'Range' });
const dependable = async (page: Page): Promise<number> =>
  Number.parseFloat((await panelOf(page).locator('.three-main .three-value').textContent()) ?? '');

async function choose(page: Page, name: RegExp): Promise<void> {
  await panelOf(page).getByRole('button').first().click();
  await page.getByRole('option', { name }).click();
}

test('another far end, heel, low power and more of the time move the range; nothing of it is saved', async ({
  page,
}) => {
  const before = await projectOf(page);
  const yacht = await dependable(page);
  await panelOf(page).getByText('Coast station', { exact: true }).first().click();
  await expect.poll(() => dependable(page)).toBeGreaterThan(yacht);
  const upright = await dependable(page);
  await panelOf(page).getByRole('slider', { name: 'Heel' }).fill('30');
  await expect.poll(() => dependable(page)).toBeLessThan(upright);
  await expect(panelOf(page).getByRole('status').filter({ hasText: '30' })).toBeVisible();
  await panelOf(page).getByRole('button', { name: 'Back to upright' }).click();
  await expect.poll(() => dependable(page)).toBe(upright);
  await panelOf(page).getByText('low', { exact: true }).click();
  await expect.poll(() => dependable(page)).toBeLessThan(upright);
  expect(await projectOf(page)).toEqual(before);
});

test('why this number adds up line by line, both ways', async ({ page }) => {
  await panelOf(page).getByText('Why this number', { exact: true }).click();
  await expect(panelOf(page)).toContainText('transmit power');
  await expect(panelOf(page)).toContainText('May lie between the antennas');
  await expect(panelOf(page)).toContainText('What makes the band wide');
  await panelOf(page).getByText('You hear them', { exact: true }).click();
  await expect(panelOf(page)).toContainText('VHF-1, sensitivity');
});

test('an HF set shows its bands by the hour, a terminal its sky, a receiver its lead', async ({ page }) => {
  await choose(page, /^HF-1 by/);
  await expect(panelOf(page)).toContainText('Ground wave by day');
  await panelOf(page).getByText('2000', { exact: true }).click();
  await expect(panelOf(page)).toContainText('Over 2000 NM');
  await choose(page, /^SAT-1 by/);
  await expect(panelOf(page)).toContainText('With this cable the outside antenna is no better than none.');
  await panelOf(page).getByText('Mainsail set', { exact: true }).click();
  await expect(panelOf(page)).toContainText(/Main mast: (mainsail|sail)|[Mm]ainsail takes/);
  await choose(page, /^AIS-1 by A4/);
  await expect(panelOf(page)).toContainText('sees no sky under metal');
});
