import { expect, type Locator, type Page } from '@playwright/test';
import type { Project, Subject } from '../../core/model/project.ts';
import type { TestHook } from '../../renderer/canvas/testHook.ts';

declare global {
  interface Window {
    readonly __backstayTest?: TestHook;
  }
}

/** Opens the app afresh with its test hook, and fails the test on any error in the page. */
export async function openApp(page: Page): Promise<void> {
  const problems: string[] = [];
  page.on('pageerror', (error) => problems.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push(message.text());
  });
  await page.goto('./?test=1');
  await page.waitForFunction(() => window.__backstayTest !== undefined);
  expect(problems).toEqual([]);
}

/** The document as it stands in the page. */
export async function projectOf(page: Page): Promise<Project> {
  return JSON.parse(await page.evaluate(() => window.__backstayTest?.projectJson() ?? 'null')) as Project;
}

export async function pointOf(page: Page, subject: Subject): Promise<{ x: number; y: number }> {
  const point = await page.evaluate((wanted) => window.__backstayTest?.screenPointOf(wanted) ?? null, subject);
  if (!point) throw new Error(`nothing on the screen for ${subject.kind} ${subject.id}`);
  return point;
}

export async function pointOfPort(page: Page, itemId: string, portId: string): Promise<{ x: number; y: number }> {
  const point = await page.evaluate((end) => window.__backstayTest?.screenPointOfPort(end) ?? null, { itemId, portId });
  if (!point) throw new Error(`nothing on the screen for port ${portId} of ${itemId}`);
  return point;
}

/** Drags in small steps, as a hand does. */
export async function drag(page: Page, from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 4, from.y + 4);
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 6 });
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
}

export async function openDemo(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Commands' }).click();
  await page.keyboard.type(`open demo: ${name}`);
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await projectOf(page)).boat.name).toBe(name);
}

export const panelTab = (page: Page, name: string): Locator => page.getByRole('tab', { name, exact: true });
