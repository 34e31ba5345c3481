import type { Page } from 'playwright-core';
import { goTo, openFile, showStages } from './pages.ts';

/**
 * Takes a page to every screen that there is: the shelf empty and filled, the settings, and each stage that the
 * pattern's own list of stages names. Gives back what `inspect` found, with the screen's name before each.
 */
export async function onEveryScreen(
  page: Page,
  inspect: () => Promise<readonly string[]>,
): Promise<string[]> {
  const found: string[] = [];
  const here = async (screen: string) => {
    await page.evaluate(() => {
      for (const folded of document.querySelectorAll('details')) folded.open = true;
    });
    await atRest(page);
    for (const one of await inspect()) found.push(`${screen}: ${one}`);
  };
  await here('empty shelf');
  await openFile(page, 'examples/rosehip-edging.json');
  await showStages(page);
  for (const stage of await page.getByRole('navigation').getByRole('link').allTextContents()) {
    await goTo(page, stage);
    await here(stage);
  }
  await goTo(page, 'Pins');
  await page.locator('canvas.sheet').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Show the pins as a table' }).click();
  await page.getByRole('table').getByRole('button').first().click();
  await here('Pins with its table');
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.getByRole('button', { name: /^Remove/ }).click();
  await here('shelf');
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByRole('heading', { name: 'Settings' }).waitFor();
  await here('settings');
  return found;
}

/** Waits until the page has said what it has to say, or goes on with something long. */
async function atRest(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const until = performance.now() + 8000;
    for (let before = '', since = performance.now(); performance.now() < until; ) {
      await new Promise((done) => setTimeout(done, 50));
      const now = document.body.innerHTML;
      if (now !== before) since = performance.now();
      before = now;
      if (performance.now() - since > 300) return;
    }
  });
}
