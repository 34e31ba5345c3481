import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** What axe-core finds against WCAG 2.2, levels A and AA, one line each. */
export async function violations(page: Page): Promise<string[]> {
  const found = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  return found.violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}
