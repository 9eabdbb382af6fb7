import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { parseProject } from '../../core/document/load.ts';
import { dragFile, giveDisk } from './browserDisk.ts';
import { openApp, projectOf } from './support.ts';

// Files and the work in them, in the browser host: recovery, changes by others, failed saves, drops, broken files.

const PELLUNA = readFileSync(resolve(import.meta.dirname, '../../assets/demo/pelluna.backstay'), 'utf8');
/** Longer than the second after which a recovery copy is written. */
const COPY_IS_KEPT_MS = 1800;

test.beforeEach(({ page }) => openApp(page));

/** Moves everything up by one step: a change that shows in the document. */
async function change(page: Page): Promise<void> {
  await page.keyboard.press('Alt+d');
  await page.keyboard.press('Control+a');
  await page.keyboard.press('ArrowUp');
  await expect(page.locator('.unsaved')).toBeVisible();
}

/** Loads the page anew without the question of the browser's own, as a crash would. */
async function crash(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.addEventListener('beforeunload', (event) => event.stopImmediatePropagation(), true);
  });
  await page.reload();
  await page.waitForFunction(() => window.__backstayTest !== undefined);
}

const menuItem = async (page: Page, menu: string, name: RegExp): Promise<void> => {
  await page.getByRole('button', { name: menu, exact: true }).click();
  await page.getByRole('menuitem', { name }).click();
};

const question = (page: Page, name: RegExp) => page.getByRole('alertdialog', { name });

test('unsaved work is offered at the next start, opens as it was, and is gone once saved', async ({ page }) => {
  await change(page);
  const lost = await projectOf(page);
  await page.waitForTimeout(COPY_IS_KEPT_MS);
  await crash(page);
  const dialog = page.getByRole('dialog', { name: 'Recovered work' });
  await expect(dialog).toContainText(lost.title);
  await expect(dialog).toContainText('Never saved to a file');
  await expect(dialog).toContainText(`${lost.items.length} `);
  await dialog.getByRole('button', { name: `Open ${lost.title}` }).click();
  await expect(dialog).toHaveCount(0);
  expect(await projectOf(page)).toEqual(lost);
  await expect(page.locator('.unsaved')).toBeVisible();

  // A second crash loses it as little as the first.
  await crash(page);
  await expect(dialog).toContainText(lost.title);
  await dialog.getByRole('button', { name: `Open ${lost.title}` }).click();
  const disk = await giveDisk(page, '');
  await page.keyboard.press('Control+s');
  await expect(page.getByRole('status').first()).toContainText('Saved boat.backstay');
  const written = parseProject(await disk.text());
  expect(written.ok && written.project).toEqual(lost);
  await page.reload();
  await page.waitForFunction(() => window.__backstayTest !== undefined);
  await page.waitForTimeout(500);
  await expect(page.getByRole('dialog')).toHaveCount(0);
});

test('a recovery copy is thrown away only when that is said twice, and Later keeps it', async ({ page }) => {
  await change(page);
  const { title } = await projectOf(page);
  await page.waitForTimeout(COPY_IS_KEPT_MS);
  await crash(page);
  const dialog = page.getByRole('dialog', { name: 'Recovered work' });
  await dialog.getByRole('button', { name: 'Later' }).click();
  await expect(dialog).toHaveCount(0);
  await menuItem(page, 'File', /^Recovered work/);
  await dialog.getByRole('button', { name: `Discard ${title}` }).click();
  await dialog.getByRole('button', { name: 'Keep' }).click();
  await expect(dialog).toContainText(title);
  await dialog.getByRole('button', { name: `Discard ${title}` }).click();
  await dialog.getByRole('button', { name: `Discard ${title} for good` }).click();
  await expect(dialog).toContainText('There is no unsaved work to recover');
});

test('work given up on purpose leaves no copy behind', async ({ page }) => {
  await change(page);
  await page.waitForTimeout(COPY_IS_KEPT_MS);
  await menuItem(page, 'File', /^Open demo/);
  await page.getByRole('menuitem', { name: /^Pelluna/ }).click();
  await question(page, /^Save the changes/)
    .getByRole('button', { name: 'Do not save' })
    .click();
  await expect.poll(async () => (await projectOf(page)).boat.name).toBe('Pelluna');
  await crash(page);
  await page.waitForTimeout(500);
  await expect(page.getByRole('dialog')).toHaveCount(0);
});

test('Cancel keeps the unsaved document; Save writes it first', async ({ page }) => {
  const disk = await giveDisk(page, PELLUNA);
  await change(page);
  const mine = await projectOf(page);
  await page.keyboard.press('Control+o');
  const asked = question(page, /^Save the changes/);
  await expect(asked.getByRole('button', { name: 'Save', exact: true })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(asked).toHaveCount(0);
  expect(await projectOf(page)).toEqual(mine);

  await page.keyboard.press('Control+o');
  await asked.getByRole('button', { name: 'Save', exact: true }).click();
  await expect.poll(async () => (await projectOf(page)).boat.name).toBe('Pelluna');
  const written = parseProject(await disk.text());
  expect(written.ok && written.project).toEqual(mine);
});

test('a file changed by someone else is not overwritten without a word', async ({ page }) => {
  const disk = await giveDisk(page, PELLUNA);
  await page.keyboard.press('Control+o');
  await expect.poll(async () => (await projectOf(page)).boat.name).toBe('Pelluna');
  await change(page);
  const mine = await projectOf(page);
  const theirs = PELLUNA.replace('"title": "', '"title": "Theirs: ');
  expect(theirs).not.toBe(PELLUNA);
  await disk.changeBehindTheBack(theirs);

  await page.keyboard.press('Control+s');
  const asked = question(page, /^boat\.backstay was changed by someone else/);
  await expect(asked).toContainText('On the disk it was changed today at');
  await expect(asked).toContainText('It was last read or saved here today at');
  await asked.getByRole('button', { name: 'Cancel' }).click();
  expect(await disk.text()).toBe(theirs);

  await page.keyboard.press('Control+s');
  await asked.getByRole('button', { name: 'Overwrite theirs' }).click();
  await expect(page.getByText('Saved boat.backstay')).toBeVisible();
  const written = parseProject(await disk.text());
  expect(written.ok && written.project).toEqual(mine);
});

test('theirs can be opened, and mine waits in a recovery copy', async ({ page }) => {
  const disk = await giveDisk(page, PELLUNA);
  await page.keyboard.press('Control+o');
  await expect.poll(async () => (await projectOf(page)).boat.name).toBe('Pelluna');
  await change(page);
  const mine = await projectOf(page);
  await disk.changeBehindTheBack(PELLUNA.replace('"title": "', '"title": "Theirs: '));
  await page.keyboard.press('Control+s');
  await question(page, /changed by someone else/)
    .getByRole('button', { name: 'Open theirs' })
    .click();
  await expect.poll(async () => (await projectOf(page)).title).toContain('Theirs: ');
  await crash(page);
  const dialog = page.getByRole('dialog', { name: 'Recovered work' });
  await dialog.getByRole('button', { name: `Open ${mine.title}` }).click();
  await expect.poll(() => projectOf(page)).toEqual(mine);
});

test('a save that fails keeps the work and offers another place', async ({ page }) => {
  const disk = await giveDisk(page, PELLUNA);
  await page.keyboard.press('Control+o');
  await expect.poll(async () => (await projectOf(page)).boat.name).toBe('Pelluna');
  await change(page);
  const mine = await projectOf(page);
  await disk.failWith('The disk is full.');
  await page.keyboard.press('Control+s');
  const asked = question(page, /^boat\.backstay is not saved/);
  await expect(asked).toContainText('The disk is full.');
  await asked.getByRole('button', { name: 'Try again' }).click();
  await expect(asked).toContainText('The disk is full.');
  expect(await projectOf(page)).toEqual(mine);
  await expect(page.locator('.unsaved')).toBeVisible();
  await disk.failWith(null);
  await asked.getByRole('button', { name: 'Save as…' }).click();
  await expect(page.getByText('Saved boat.backstay')).toBeVisible();
  await expect(page.locator('.unsaved')).toHaveCount(0);
});

test('overwriting that fails asks again, with the other place as the button that Enter presses', async ({ page }) => {
  const disk = await giveDisk(page, PELLUNA);
  await page.keyboard.press('Control+o');
  await expect.poll(async () => (await projectOf(page)).boat.name).toBe('Pelluna');
  await change(page);
  await disk.changeBehindTheBack(`${PELLUNA} `);
  await disk.failWith('The disk is full.');
  await page.keyboard.press('Control+s');
  await question(page, /changed by someone else/)
    .getByRole('button', { name: 'Overwrite theirs' })
    .click();
  const failed = question(page, /^boat\.backstay is not saved/);
  await expect(failed.getByRole('button', { name: 'Save as…' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(failed).toHaveCount(0);
  expect(await disk.text()).toBe(`${PELLUNA} `);
});

test('a document dropped on the window opens; anything else gets a sentence', async ({ page }) => {
  await dragFile(page, 'pelluna.backstay', PELLUNA, false);
  await expect(page.getByText(/^Drop a Backstay document/)).toBeVisible();
  const before = await projectOf(page);
  await dragFile(page, 'photo.png', 'not a document');
  await expect(page.getByRole('status').first()).toContainText('photo.png is not a Backstay document');
  await expect(page.getByText(/^Drop a Backstay document/)).toHaveCount(0);
  expect(await projectOf(page)).toEqual(before);
  await dragFile(page, 'pelluna.backstay', PELLUNA);
  await expect.poll(async () => (await projectOf(page)).boat.name).toBe('Pelluna');
  await expect(page.locator('.top-bar-title')).toContainText('pelluna.backstay');
});

test('a broken file shows what can be read of it as text, marks the place, and can be set aside', async ({ page }) => {
  const broken = PELLUNA.replace('"title": "', '"title": <script>window.__hacked = 1</script> "');
  await dragFile(page, 'broken.backstay', broken);
  const dialog = page.getByRole('dialog', { name: 'broken.backstay was not opened' });
  const readable = dialog.getByRole('region', { name: 'What can be read of it' });
  await expect(readable).toContainText('"format": "backstay"');
  await expect(readable.locator('mark')).toHaveText('<');
  await expect(readable.locator('mark')).toBeInViewport();
  await expect(readable).toContainText('script>window.__hacked = 1</script>');
  expect(await page.evaluate(() => '__hacked' in window)).toBe(false);
  const download = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Set a copy aside' }).click();
  const copy = await download;
  expect(copy.suggestedFilename()).toMatch(/^broken\.backstay\.unreadable-\d{4}-\d\d-\d\d$/);
  expect(readFileSync(await copy.path(), 'utf8')).toBe(broken);
  await expect(dialog).toContainText('is in your downloads');
});

test('Print hands over the install sheet as PDF', async ({ page, context }) => {
  // A tab of its own where the browser shows PDFs, else a download of the same bytes.
  await page.evaluate(() => Object.assign(window, { open: () => null }));
  const download = page.waitForEvent('download');
  await menuItem(page, 'File', /^Print the install sheet/);
  const sheet = await download;
  expect(sheet.suggestedFilename()).toBe('brannoch-tern-install-sheet.pdf');
  expect(
    readFileSync(await sheet.path())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');
  expect(context.pages()).toHaveLength(1);
});

test('a large file shows how far it is read, and Cancel leaves what was open', async ({ page }) => {
  const before = await projectOf(page);
  await page.evaluate(() => {
    // A file whose second half never comes, so that there is time to press.
    const bytes = new Uint8Array(4_000_000).fill(32);
    const file = new File([bytes], 'large.backstay');
    let pieces = 0;
    Object.assign(file, {
      stream: () =>
        new ReadableStream({
          pull: async (controller) => {
            pieces += 1;
            await new Promise((done) => setTimeout(done, pieces > 2 ? 300 : 0));
            controller.enqueue(bytes.slice(0, 100_000));
          },
        }),
    });
    Object.assign(window, { showOpenFilePicker: async () => [{ kind: 'file', getFile: async () => file }] });
  });
  await page.keyboard.press('Control+o');
  const progress = page.getByRole('progressbar', { name: 'Reading the file' });
  await expect(progress).toBeVisible();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(progress).toHaveCount(0);
  expect(await projectOf(page)).toEqual(before);
});
