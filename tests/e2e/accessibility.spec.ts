import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { openApp, panelTab } from './support.ts';

for (const colorScheme of ['light', 'dark'] as const) {
  test(`no serious accessibility violation on any page, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await openApp(page);
    for (const tab of ['Particulars', 'Path loss', 'Range', 'Redundancy', 'Findings', 'Install sheet']) {
      await panelTab(page, tab).click();
      const { violations } = await new AxeBuilder({ page }).analyze();
      const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
      expect(
        serious.map(
          ({ id, nodes }) =>
            `${tab}: ${id}: ${nodes
              .map(({ target }) => target.join(' '))
              .slice(0, 3)
              .join(' | ')}`,
        ),
      ).toEqual([]);
    }
    await page.getByRole('tab', { name: 'Outline' }).click();
    await page.getByRole('button', { name: 'Settings' }).click();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(
      violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id),
    ).toEqual([]);
  });
}
