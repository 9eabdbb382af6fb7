import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { parseProject } from '../../core/document/load.ts';
import { drag, openApp, openDemo, panelTab, pointOf, pointOfPort, projectOf } from './support.ts';

// The main job by pointer, in a real browser against the browser host.

test.beforeEach(({ page }) => openApp(page));

test('a first start shows the first demo boat with its remarks', async ({ page }) => {
  await expect(page.getByRole('heading', { name: 'Brannoch Tern: radio refit' })).toBeVisible();
  await panelTab(page, 'Findings').click();
  await expect(page.getByRole('article', { name: /AIS-1 does not transmit/ })).toBeVisible();
});

for (const name of ['Brannoch Tern', 'Pelluna', 'Vessarine']) {
  test(`${name} opens and every page of it has something to say`, async ({ page }) => {
    await openDemo(page, name);
    for (const tab of ['Particulars', 'Path loss', 'Range', 'Redundancy', 'Findings', 'Install sheet']) {
      await panelTab(page, tab).click();
      const text = (await page.getByRole('tabpanel', { name: tab, exact: true }).textContent()) ?? '';
      expect(text.length, tab).toBeGreaterThan(200);
      expect(text, tab).not.toMatch(/NaN|undefined|Infinity|\[object/);
    }
  });
}

test('a part dragged onto the boat is added, and undo takes it away again', async ({ page }) => {
  const before = await projectOf(page);
  await page.getByPlaceholder('Search parts').fill('AIS-SART');
  const row = await page.getByRole('option', { name: /^AIS-SART/ }).boundingBox();
  if (!row) throw new Error('the part is not in the list');
  const place = await pointOf(page, { kind: 'place', id: 'companionway' });
  await drag(page, { x: row.x + 60, y: row.y + row.height / 2 }, place);
  await expect.poll(async () => (await projectOf(page)).items.length).toBe(before.items.length + 1);
  const added = (await projectOf(page)).items.at(-1);
  expect(added?.partId).toBe('sart-ais');
  expect(added?.placeId).toBe('companionway');
  await page.keyboard.press('Control+z');
  await expect.poll(() => projectOf(page)).toEqual(before);
  await page.keyboard.press('Control+Shift+z');
  await expect.poll(async () => (await projectOf(page)).items.length).toBe(before.items.length + 1);
});

async function dropPart(page: Page, search: string, name: RegExp, placeId: string): Promise<string> {
  await page.getByPlaceholder('Search parts').fill(search);
  const row = await page.getByRole('option', { name }).boundingBox();
  if (!row) throw new Error(`${search} is not in the list`);
  const before = (await projectOf(page)).items.length;
  await drag(page, { x: row.x + 60, y: row.y + row.height / 2 }, await pointOf(page, { kind: 'place', id: placeId }));
  await expect.poll(async () => (await projectOf(page)).items.length).toBe(before + 1);
  return (await projectOf(page)).items.at(-1)?.id ?? '';
}

test('a run drawn from port to port joins them, has a length and a loss, and can be undone', async ({ page }) => {
  const whip = await dropPart(page, 'masthead whip', /^VHF masthead whip/, 'mizzen-truck');
  const set = await dropPart(page, 'AIS receiver', /^AIS receiver/, 'cockpit');
  const before = await projectOf(page);
  await drag(page, await pointOfPort(page, set, 'rf'), await pointOfPort(page, whip, 'feed'));
  await expect.poll(async () => (await projectOf(page)).runs.length).toBe(before.runs.length + 1);
  const run = (await projectOf(page)).runs.at(-1);
  expect([run?.from.itemId, run?.to.itemId].sort()).toEqual([set, whip].sort());
  await page.getByRole('tab', { name: 'Outline' }).click();
  await expect(page.getByRole('row', { name: new RegExp(`^${run?.number} .* m, .* dB`) })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect.poll(() => projectOf(page)).toEqual(before);
});

test('a port that does not fit takes no line and says why', async ({ page }) => {
  const set = await dropPart(page, 'AIS receiver', /^AIS receiver/, 'cockpit');
  const before = await projectOf(page);
  await drag(page, await pointOfPort(page, set, 'rf'), await pointOfPort(page, 'rad-1', 'dc'));
  expect((await projectOf(page)).runs.length).toBe(before.runs.length);
  expect((await projectOf(page)).feeds.length).toBe(before.feeds.length);
  await expect(
    page
      .getByRole('status')
      .filter({ hasText: /does not fit|cannot|supply/i })
      .first(),
  ).toBeVisible();
});

test('a joint dropped on a run is inserted into it, and its two parts add up to the old length', async ({ page }) => {
  const before = await projectOf(page);
  const old = before.runs.find(({ id }) => id === 'w06');
  await page.getByPlaceholder('Search parts').fill('Joint, N pair');
  const row = await page.getByRole('option', { name: /^Joint, N pair/ }).boundingBox();
  if (!row || !old) throw new Error('nothing to drag, or nothing to drop it on');
  await drag(page, { x: row.x + 60, y: row.y + row.height / 2 }, await pointOf(page, { kind: 'run', id: 'w06' }));
  await expect.poll(async () => (await projectOf(page)).runs.length).toBe(before.runs.length + 1);
  const { runs, items } = await projectOf(page);
  const joint = items.at(-1)?.id ?? '';
  const halves = runs.filter(({ from, to }) => from.itemId === joint || to.itemId === joint);
  expect(halves).toHaveLength(2);
  const total = halves.reduce((sum, run) => sum + (run.measuredLengthM ?? 0), 0);
  expect(total).toBeCloseTo(old.measuredLengthM ?? 0, 1);
});

test('a longer cable loses more: the number on the path-loss page follows the edit', async ({ page }) => {
  await page.getByRole('tab', { name: 'Outline' }).click();
  await page.getByRole('row', { name: /^W01 / }).click();
  await panelTab(page, 'Path loss').click();
  const panel = page.getByRole('tabpanel', { name: 'Path loss' });
  await expect(panel).toContainText(/arrives as 7\.\d+ W/);
  await panelTab(page, 'Particulars').click();
  const measured = page.getByRole('textbox', { name: 'Measured on the boat' });
  await measured.fill('34');
  await measured.press('Enter');
  await panelTab(page, 'Path loss').click();
  await expect(panel).toContainText(/arrives as 3\.\d+ W/);
});

test('dragging the masthead antenna down shortens its range while it moves', async ({ page }) => {
  await panelTab(page, 'Range').click();
  const panel = page.getByRole('tabpanel', { name: 'Range' });
  const ship = panel.getByRole('row', { name: /^Ship’s bridge \d/ });
  await expect(ship).toContainText('20.2');
  // Taken by the whip itself: at its foot sits the port that runs are drawn from.
  const foot = await pointOf(page, { kind: 'item', id: 'a1' });
  const from = { x: foot.x, y: foot.y - 9 };
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x, from.y + 30);
  await page.mouse.move(from.x, from.y + 120, { steps: 8 });
  await expect(ship).not.toContainText('20.2');
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(ship).toContainText('20.2');
});

test('choosing a failure shows on the drawing what is left, and Escape brings the boat back', async ({ page }) => {
  await panelTab(page, 'Redundancy').click();
  await page.getByRole('button', { name: 'Main mast lost', exact: true }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Main mast lost' })).toContainText('lost');
  await page.getByRole('button', { name: /Show intact boat/ }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Main mast lost' })).toHaveCount(0);
});

test('a finding is overruled with a reason that stays in the document, and restored', async ({ page }) => {
  await panelTab(page, 'Findings').click();
  const finding = page.getByRole('article', { name: /Lamp L1 close to A1/ });
  await finding.getByRole('button', { name: 'Overrule…' }).click();
  await finding.getByRole('textbox').fill('Squelch test done, no noise');
  await finding.getByRole('button', { name: /^Overrule C/ }).click();
  await expect(finding).toContainText('Overruled: Squelch test done, no noise');
  expect((await projectOf(page)).findingOverrides).toHaveLength(1);
  await finding.getByRole('button', { name: 'Restore' }).click();
  expect((await projectOf(page)).findingOverrides).toHaveLength(0);
});

test('the install sheet comes out as a PDF whose text says what the screen says', async ({ page }) => {
  test.skip(!existsSync('/usr/bin/pdftotext'), 'pdftotext (poppler-utils) is not installed');
  await panelTab(page, 'Install sheet').click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Export PDF' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('brannoch-tern-install-sheet.pdf');
  const path = join(mkdtempSync(join(tmpdir(), 'backstay-pdf-')), 'sheet.pdf');
  await file.saveAs(path);
  const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
  for (const words of ['Brannoch Tern', 'W01', 'RG-58C/U', '17.0 m', 'Never transmit without an antenna']) {
    expect(text.replace(/\s+/g, ' ').toLowerCase()).toContain(words.toLowerCase());
  }
  expect(text).toMatch(/licensed or certificated installer/);
  expect(text).not.toMatch(/seaworthy|compliant/i);
});

test('what is saved opens again as the same document', async ({ page }) => {
  await page.getByRole('tab', { name: 'Outline' }).click();
  await page.getByRole('row', { name: /^\d+ VHF-2,/ }).click();
  await page.keyboard.press('Delete');
  const download = page.waitForEvent('download');
  await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
  await page.keyboard.press('Control+Shift+s');
  const path = await (await download).path();
  const loaded = parseProject(readFileSync(path, 'utf8'));
  if (!loaded.ok) throw new Error('the saved document does not load');
  expect(loaded.project).toEqual(await projectOf(page));
});

test('a broken file is refused with the place and the mend, and what was open stays', async ({ page }) => {
  const before = await projectOf(page);
  await page.evaluate(() => Object.assign(window, { showOpenFilePicker: undefined }));
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('menuitem', { name: /^Open…/ }).click();
  const broken = JSON.stringify({ ...before, runs: [{ ...before.runs[0], measuredLengthM: -3 }] });
  await (await chooser).setFiles({
    name: 'broken.backstay',
    mimeType: 'application/json',
    buffer: Buffer.from(broken),
  });
  const dialog = page.getByRole('dialog', { name: 'broken.backstay was not opened' });
  await expect(dialog).toContainText('W01');
  await expect(dialog).toContainText('−3 m; the least allowed is 0 m');
  await page.keyboard.press('Escape');
  expect(await projectOf(page)).toEqual(before);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);
});
