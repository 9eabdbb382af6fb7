import { expect, type Page, test } from '@playwright/test';
import { openApp, openDemo, panelTab, projectOf } from './support.ts';

// The pages of the Redundancy panel: one failure, several, chances, the raft.

test.beforeEach(async ({ page }) => {
  await openApp(page);
  await openDemo(page, 'Vessarine');
  await panelTab(page, 'Redundancy').click();
});

const view = (page: Page, name: string) => page.getByRole('tabpanel', { name, exact: true });

test('a cell says by what means and how far; another far end changes the figure', async ({ page }) => {
  const panel = view(page, 'One failure');
  const cell = panel.getByRole('button', { name: /^Mast lost, Voice, fixed VHF: reduced/ });
  const figure = await cell.locator('.cell-reach').textContent();
  await cell.click();
  await expect(panel.locator('.means')).toContainText(/VHF-2 on A2: \d+ NM dependable/);
  await panel.getByRole('button', { name: /Reach to/ }).click();
  await page.getByRole('option', { name: 'Coast station' }).click();
  await expect(cell.locator('.cell-reach')).not.toHaveText(figure ?? '');
});

test('a failure of one’s own is made from what is selected, shown, and taken away; each one step to undo', async ({
  page,
}) => {
  await page.getByRole('tab', { name: 'Outline' }).click();
  await page.getByRole('row', { name: /^\d+ VHF-1,/ }).click();
  const panel = view(page, 'One failure');
  await panel.getByRole('textbox', { name: 'Name of the failure' }).fill('Nav desk drenched');
  await panel.getByRole('button', { name: 'Add as a failure' }).click();
  await expect(page.locator('.sheet-banner')).toContainText('Nav desk drenched');
  expect((await projectOf(page)).settings.redundancy.events).toHaveLength(1);
  await page.keyboard.press('Control+z');
  expect((await projectOf(page)).settings.redundancy.events).toHaveLength(0);
});

test('an event is left out and tried again', async ({ page }) => {
  const panel = view(page, 'One failure');
  await panel.getByRole('button', { name: 'Lightning on the mast', exact: true }).click();
  await panel.getByRole('button', { name: 'Leave this event out' }).click();
  await expect(panel.getByRole('button', { name: 'Lightning on the mast', exact: true })).toHaveCount(0);
  await panel.getByRole('button', { name: 'Try again: Lightning on the mast' }).click();
  await expect(panel.getByRole('button', { name: 'Lightning on the mast', exact: true })).toHaveCount(1);
});

test('pairs name what goes with what; a thing of a pair is selected on the drawing', async ({ page }) => {
  await panelTab(page, 'Two or three').click();
  const panel = view(page, 'Two or three');
  await panel.getByRole('button', { name: 'Voice, fixed VHF' }).click();
  await expect(panel).toContainText('Two together');
  await panel.getByRole('button', { name: 'J3', exact: true }).first().click();
  await expect(page.getByRole('tab', { name: 'Outline' })).toBeVisible();
  await panelTab(page, 'Particulars').click();
  await expect(page.getByRole('tabpanel', { name: 'Particulars' })).toContainText('J3');
});

test('a stated chance replaces the assumption and moves the service; going back restores it', async ({ page }) => {
  await panelTab(page, 'Chances').click();
  const panel = view(page, 'Chances');
  const voice = panel.getByRole('row', { name: /^Voice, fixed VHF/ });
  const before = await voice.textContent();
  await voice.getByRole('button').click();
  await panel.getByRole('button', { name: 'B1', exact: true }).click();
  await panel.getByRole('textbox', { name: 'Most' }).fill('60');
  await panel.getByRole('textbox', { name: 'Likely' }).fill('40');
  await panel.getByRole('button', { name: 'Use my figure' }).click();
  await expect(voice).not.toHaveText(before ?? '');
  await panel.getByRole('button', { name: 'Back to the assumption' }).click();
  await expect(voice).toHaveText(before ?? '');
});

test('the raft page lists what goes along and how far it is heard there', async ({ page }) => {
  await panelTab(page, 'To the raft').click();
  const panel = view(page, 'To the raft');
  await expect(panel).toContainText('registered to another owner');
  await expect(panel).toContainText('Held by hand in the raft');
  await panel.getByRole('button', { name: 'Show on the drawing' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Abandon to the raft' })).toBeVisible();
});

test('a change that would help is made as one step, and undone', async ({ page }) => {
  await panelTab(page, 'What would help').click();
  const panel = view(page, 'What would help');
  const make = panel.getByRole('button', { name: 'Make this change' }).first();
  await make.waitFor();
  const before = await projectOf(page);
  await make.click();
  await expect.poll(() => projectOf(page)).not.toEqual(before);
  await page.keyboard.press('Control+z');
  await expect.poll(() => projectOf(page)).toEqual(before);
});

test('the tree opens and closes by key and saves as a drawing', async ({ page }) => {
  await panelTab(page, 'Tree').click();
  const panel = view(page, 'Tree');
  const tree = panel.getByRole('tree');
  await expect(tree.getByRole('treeitem', { name: /VHF-1/ }).first()).toBeVisible();
  await tree.getByRole('treeitem').first().focus();
  await page.keyboard.press('End');
  await expect(tree.getByRole('treeitem').last()).toBeFocused();
  const download = page.waitForEvent('download');
  await panel.getByRole('button', { name: 'Save as SVG' }).click();
  expect((await download).suggestedFilename()).toBe('vessarine-tree-voice-fixed.svg');
});

test('a rule pack is switched on and says met, not met or cannot tell, and why', async ({ page }) => {
  await panelTab(page, 'Rules').click();
  const panel = view(page, 'Rules');
  await panel.getByRole('checkbox', { name: /^GMDSS by sea area/ }).check();
  await expect(panel).toContainText(/\d+ not met/);
  await expect(panel).toContainText('A reading aid, no verdict on the boat');
  expect((await projectOf(page)).settings.redundancy.rulePacks).toEqual(['gmdss']);
});
