/**
 * For how long the page is deaf at every stage while it holds a large pattern: a hand-jittered edging of more than
 * 31,000 pins and twice as many lines, in a real browser.
 */
import type { Browser, Page } from 'playwright-core';
import { seededRandom } from '#base/random.ts';
import { launchChromium } from '../../test/support/bench/browser.ts';
import { choose, goTo, openFile } from '../../test/support/bench/pages.ts';
import { edging, jitter } from '../../test/support/patterns/index.ts';
import { watchMainThread } from './tools/main-thread.ts';
import { withFile } from './tools/patterns.ts';
import { tellSpans } from './tools/report.ts';
import { measureServed } from './tools/served.ts';

/** No task may hold the page up for longer, milliseconds. */
const DEAF = 100;
const LONG = 600_000;
const SEED = 3;
/** Milliseconds in which all that follows from a touch has come to rest. */
const REST = 2500;

const { pattern } = jitter(edging({ width: 61, repeats: 80 }), 0.15, seededRandom(SEED));

await measureServed(async (address) => {
  console.log(`${pattern.pins.length} pins, ${pattern.marks.length} markings`);
  const browser = await launchChromium();
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(address);
  const deaf = (doing: string, work: () => Promise<unknown>) => tellLongest(browser, page, doing, work);
  await deaf('opening the file', () =>
    withFile('pattern.json', JSON.stringify(pattern), (file) => openFile(page, file)),
  );
  await atPins(page, deaf);
  await atStraighten(page, deaf);
  await atMark(page, deaf);
  await deaf('Size: which thread suits', async () => {
    await goTo(page, 'Size');
    await page.getByRole('heading', { name: 'What suits it as it is' }).waitFor({ timeout: LONG });
  });
  await deaf('Look over: what to see to', async () => {
    await goTo(page, 'Look over');
    await page.locator('.panel .places, .panel .message').first().waitFor({ timeout: LONG });
  });
  await deaf('Make: the sheet to print', () => goTo(page, 'Make'));
  await atPrick(page, deaf);
  await deaf('Light', () => goTo(page, 'Light'));
  await deaf('going to the shelf', () => page.getByRole('link', { name: 'Shelf' }).click());
  await deaf('opening it from the shelf', async () => {
    await page
      .getByRole('link', { name: /^pattern/ })
      .first()
      .click();
    await page.locator('canvas.sheet').waitFor();
  });
  await browser.close();
});

type Deaf = (doing: string, work: () => Promise<unknown>) => Promise<void>;

async function tellLongest(
  browser: Browser,
  page: Page,
  doing: string,
  work: () => Promise<unknown>,
): Promise<void> {
  const { tasks } = await watchMainThread(browser, page, async () => {
    await work();
    await page.waitForTimeout(REST);
  });
  tellSpans(`longest task, ${doing}`, tasks, 1, DEAF);
}

async function atPins(page: Page, deaf: Deaf): Promise<void> {
  await deaf('Pins', () => goTo(page, 'Pins'));
  const sheet = page.locator('canvas.sheet');
  await deaf('Pins: choosing and moving one', async () => {
    await sheet.focus();
    for (let step = 0; step < 12; step++) await page.keyboard.press('+');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Remove this pin' }).waitFor();
    for (const key of ['ArrowRight', 'ArrowDown']) await page.keyboard.press(`Alt+${key}`);
  });
  await deaf('Pins: removing it', () => page.getByRole('button', { name: 'Remove this pin' }).click());
  await undoAndRedo(page, deaf, 'Pins');
  await deaf('Pins: all of them as a table', () =>
    page.getByRole('button', { name: 'Show the pins as a table' }).click(),
  );
  await deaf('Pins: the whole sheet', () => page.getByRole('button', { name: 'Whole sheet' }).click());
}

async function atStraighten(page: Page, deaf: Deaf): Promise<void> {
  const slider = page.getByRole('slider', { name: 'How far straightened' });
  await deaf('Straighten: looking', async () => {
    await goTo(page, 'Straighten');
    await slider.waitFor({ timeout: LONG });
  });
  await slider.focus();
  for (const [doing, key] of [
    ['the slider’s first move', 'ArrowRight'],
    ['the slider at its end', 'End'],
    ['the slider at its beginning', 'Home'],
  ] as const) {
    await deaf(`Straighten: ${doing}`, () => page.keyboard.press(key));
  }
  await deaf('Straighten: leaving one part', async () => {
    await page.locator('.panel input[role=switch]').nth(1).focus();
    await page.keyboard.press('Space');
  });
  await deaf('Straighten: taking the rest', async () => {
    await page.locator('.panel').getByRole('button', { name: 'Straighten', exact: true }).click();
    await page
      .getByText(/^All of them stand|would/)
      .first()
      .waitFor({ timeout: LONG });
  });
  await undoAndRedo(page, deaf, 'Straighten');
}

async function atMark(page: Page, deaf: Deaf): Promise<void> {
  await deaf('Mark', () => goTo(page, 'Mark'));
  await choose(page, 'tints an area');
  await deaf('Mark: tinting an area', async () => {
    await page.locator('canvas.sheet').focus();
    for (let step = 0; step < 12; step++) await page.keyboard.press('+');
    await page.keyboard.press('Enter');
  });
  await deaf('Mark: all markings as a table', () =>
    page.getByRole('button', { name: 'Show the markings as a table' }).click(),
  );
}

async function atPrick(page: Page, deaf: Deaf): Promise<void> {
  const begin = page.getByRole('button', { name: 'Begin pricking' });
  await deaf('Prick: the way through the holes', async () => {
    await goTo(page, 'Prick');
    await begin.waitFor({ timeout: LONG });
  });
  await deaf('Prick: beginning', () => begin.click());
  await deaf('Prick: a line done', () => page.getByRole('button', { name: 'Done, next' }).click());
}

async function undoAndRedo(page: Page, deaf: Deaf, stage: string): Promise<void> {
  await deaf(`${stage}: undoing it`, () => page.getByRole('button', { name: 'Undo' }).click());
  await deaf(`${stage}: doing it again`, () => page.getByRole('button', { name: 'Redo' }).click());
}
