import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { REDUNDANCY_VIEWS } from '../../renderer/store/view.ts';
import { openApp, panelTab } from './support.ts';

async function expectNoViolation(page: Page, where: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
  const words = serious.map(({ id, nodes }) => {
    const targets = nodes.map(({ target }) => target.join(' ')).slice(0, 3);
    return `${where}: ${id}: ${targets.join(' | ')}`;
  });
  expect(words).toEqual([]);
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`no serious accessibility violation on any page, ${colorScheme}`, async ({ page }) => {
    test.slow();
    await page.emulateMedia({ colorScheme });
    await openApp(page);
    for (const tab of ['Particulars', 'Path loss', 'Range', 'Redundancy', 'Findings', 'Install sheet']) {
      await panelTab(page, tab).click();
      await expectNoViolation(page, tab);
    }
    await panelTab(page, 'Redundancy').click();
    for (const { name } of REDUNDANCY_VIEWS) {
      await panelTab(page, name).click();
      await expectNoViolation(page, name);
    }
    await page.getByRole('tab', { name: 'Outline' }).click();
    await page.getByRole('button', { name: 'Settings' }).click();
    await expectNoViolation(page, 'Settings');
  });
}
