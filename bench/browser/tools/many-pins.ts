import type { Browser, Page } from 'playwright-core';
import { goTo, openFile } from '../../../test/support/bench/pages.ts';
import { tellLongestTask } from './deaf.ts';
import { largeEdging } from './large-edging.ts';
import { withFile } from './patterns.ts';

const LONG = 600_000;

/** The longest task of each act that a large pattern is straightened, edited and put away by. */
export async function workOnManyPins(browser: Browser, address: string): Promise<void> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(address);
  await page.evaluate(() => localStorage.setItem('pinlight-preferences', '{"repeats":"each"}'));
  await page.reload();
  const tell = (doing: string, work: () => Promise<unknown>, quiet?: number) =>
    tellLongestTask(browser, page, `31473 pins, ${doing}`, work, quiet);
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
  await tell('opening', () => withFile('edging.json', largeEdging(), (file) => openFile(page, file)), 3000);
  await straighten(page, tell, press);
  await edit(page, tell, press);
  for (const stage of ['Draft', 'Mark', 'Size', 'Make', 'Prick', 'Light']) {
    await tell(`going to ${stage}`, () => goTo(page, stage), 3000);
  }
  await tell('going to the shelf', () => page.getByRole('link', { name: 'Shelf' }).click(), 3000);
  await tell('opening it again', async () => {
    await page.locator('.shelf-open').first().click();
    await page.locator('canvas.sheet').waitFor();
  });
  await page.close();
}

type Tell = (doing: string, work: () => Promise<unknown>, quiet?: number) => Promise<void>;
type Press = (name: string) => Promise<void>;

async function straighten(page: Page, tell: Tell, press: Press): Promise<void> {
  await tell('straightening, looking', async () => {
    await goTo(page, 'Straighten');
    await page.getByRole('heading', { name: 'What was found' }).waitFor({ timeout: LONG });
  });
  await page.getByRole('slider', { name: 'How far straightened' }).focus();
  await tell('straightening, the slider’s first move', () => page.keyboard.press('ArrowRight'));
  await tell('straightening, sliding', async () => {
    for (let step = 0; step < 20; step++) await page.keyboard.press('ArrowRight');
  });
  await tell('straightening, its end', () => press('Straightened'));
  await tell('straightening, one part left', () => page.locator('.parts-found .switch').first().click());
  await tell('straightening, all left', () => press('Leave all'));
  await tell('straightening, all taken', () => press('Take all'));
  await tell('straightening, done', () => press('Straighten'), 6000);
}

async function edit(page: Page, tell: Tell, press: Press): Promise<void> {
  await tell('going to Pins', () => goTo(page, 'Pins'));
  await tell('straightening undone', () => press('Undo'), 3000);
  await tell('and done again', () => press('Redo'), 3000);
  await press('Earlier versions');
  await tell(
    'going back to a version',
    () =>
      page
        .getByRole('button', { name: /^Go back to/ })
        .first()
        .click(),
    3000,
  );
}
