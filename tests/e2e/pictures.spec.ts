import { expect, test } from '@playwright/test';
import { openApp, panelTab, projectOf } from './support.ts';

// A picture of the user's own under the drawing, and a photo of something aboard.

/** A white PNG of 40 by 20 px, drawn by the browser itself. */
async function png(page: import('@playwright/test').Page): Promise<Buffer> {
  const base64 = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(40, 20);
    canvas.getContext('2d')?.fillRect(0, 0, 40, 20);
    const blob = await canvas.convertToBlob({ type: 'image/png' });
    return btoa(String.fromCharCode(...new Uint8Array(await blob.arrayBuffer())));
  });
  return Buffer.from(base64, 'base64');
}

test('a picture is laid under the drawing, scaled, and taken away again; a script is refused', async ({ page }) => {
  await openApp(page);
  await panelTab(page, 'Particulars').click();
  const section = page.getByRole('region', { name: 'Picture under the drawing' });
  const file = section.locator('input[type=file]');
  await file.setInputFiles({ name: 'side.png', mimeType: 'image/png', buffer: await png(page) });
  await expect.poll(async () => (await projectOf(page)).pictures?.[0]?.widthPx).toBe(40);
  await section.getByRole('textbox', { name: /^Stem, from the left/ }).fill('39');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await projectOf(page)).underlay?.stemXPx).toBe(39);
  await section.getByRole('button', { name: 'Take it away' }).click();
  await expect.poll(async () => (await projectOf(page)).pictures).toBeUndefined();
  const script = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" onload="document.title=1"/>');
  await file.setInputFiles({ name: 'evil.png', mimeType: 'image/png', buffer: script });
  await expect(page.getByRole('status').filter({ hasText: 'evil.png is neither a PNG nor a JPEG' })).toBeVisible();
});

test('a photo goes with the part it shows', async ({ page }) => {
  await openApp(page);
  await page.keyboard.press('Alt+o');
  await page.getByRole('row', { name: /^\d+ VHF-1,/ }).click();
  await panelTab(page, 'Particulars').click();
  const photos = page.getByRole('region', { name: 'Photos' });
  await photos.locator('input[type=file]').setInputFiles({
    name: 'plug.png',
    mimeType: 'image/png',
    buffer: await png(page),
  });
  await expect(photos).toContainText('plug.png');
  expect((await projectOf(page)).photos).toHaveLength(1);
});
