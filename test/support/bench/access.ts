import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** What axe-core finds against WCAG 2.2, levels A and AA, and against good practice; one line each. */
export async function violations(page: Page): Promise<string[]> {
  // Before the page is up there would be nothing to find fault with.
  await page.locator('main').first().waitFor();
  const found = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  return found.violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}
