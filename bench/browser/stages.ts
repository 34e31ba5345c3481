/**
 * For how long the page is deaf at every stage while it holds a large pattern: a hand-jittered edging of 31,473 pins
 * and twice as many lines, in a real browser.
 */
import type { Page } from 'playwright-core';
import { launchChromium } from '../../test/support/bench/browser.ts';
import { choose, everyTapCounts, goTo, openFile } from '../../test/support/bench/pages.ts';
import { longestTasksOf, type TellLongest } from './tools/deaf.ts';
import { largeEdging } from './tools/large-edging.ts';
import { withFile } from './tools/patterns.ts';
import { measureServed } from './tools/served.ts';

const LONG = 600_000;

await measureServed(async (address) => {
  const browser = await launchChromium();
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(address);
  await everyTapCounts(page);
  const tell = longestTasksOf(browser, page);
  await tell('opening the file', () =>
    withFile('edging.json', largeEdging(), (file) => openFile(page, file)),
  );
  await tell('Draft', () => goTo(page, 'Draft'));
  await atPins(page, tell);
  await atStraighten(page, tell);
  await atMark(page, tell);
  await tell('Size: which thread suits', async () => {
    await goTo(page, 'Size');
    await page.getByRole('heading', { name: 'What suits it as it is' }).waitFor({ timeout: LONG });
  });
  await tell('Look over: what to see to', async () => {
    await goTo(page, 'Look over');
    await page.locator('.panel .places, .panel .message').first().waitFor({ timeout: LONG });
  });
  await tell('Make', () => goTo(page, 'Make'));
  await atPrick(page, tell);
  await tell('Light', () => goTo(page, 'Light'));
  await atVersions(page, tell);
  await tell('going to the shelf', () => page.getByRole('link', { name: 'Shelf' }).click());
  await tell('opening it from the shelf', async () => {
    await page.locator('.shelf-open').first().click();
    await page.locator('canvas.sheet').waitFor();
  });
  await browser.close();
});

function press(page: Page, name: string): Promise<void> {
  return page.getByRole('button', { name, exact: true }).click();
}

/** Chooses what lies in the middle of the sheet, seen from near by. */
async function touchMiddle(page: Page): Promise<void> {
  await page.locator('canvas.sheet').focus();
  for (let step = 0; step < 12; step++) await page.keyboard.press('+');
  await page.keyboard.press('Enter');
}

async function atPins(page: Page, tell: TellLongest): Promise<void> {
  await tell('Pins', () => goTo(page, 'Pins'));
  await tell('Pins: choosing one', async () => {
    await touchMiddle(page);
    await page.getByRole('button', { name: 'Remove this pin' }).waitFor();
  });
  await tell('Pins: removing it', () => press(page, 'Remove this pin'));
  await undoAndRedo(page, tell, 'Pins');
  await tell('Pins: all of them as a table', () => press(page, 'Show the pins as a table'));
  await tell('Pins: the whole sheet', () => press(page, 'Whole sheet'));
}

async function atStraighten(page: Page, tell: TellLongest): Promise<void> {
  const slider = page.getByRole('slider', { name: 'How far straightened' });
  await tell('Straighten: looking', async () => {
    await goTo(page, 'Straighten');
    await slider.waitFor({ timeout: LONG });
  });
  await slider.focus();
  await tell('Straighten: the slider’s first move', () => page.keyboard.press('ArrowRight'));
  await tell('Straighten: sliding', async () => {
    for (let step = 0; step < 20; step++) await page.keyboard.press('ArrowRight');
  });
  await tell('Straighten: the slider at its end', () => press(page, 'Straightened'));
  await tell('Straighten: the slider at its beginning', () => press(page, 'As it was'));
  await tell('Straighten: leaving one part', () => page.locator('.parts-found .switch').first().click());
  await tell('Straighten: leaving all', () => press(page, 'Leave all'));
  await tell('Straighten: taking all', () => press(page, 'Take all'));
  await tell('Straighten: done', async () => {
    await press(page, 'Straighten');
    await page
      .getByText(/pins moved, the farthest by/)
      .first()
      .waitFor({ timeout: LONG });
  });
  await undoAndRedo(page, tell, 'Straighten');
}

async function atMark(page: Page, tell: TellLongest): Promise<void> {
  await tell('Mark', () => goTo(page, 'Mark'));
  await choose(page, 'tints an area');
  await tell('Mark: tinting an area', () => touchMiddle(page));
  await tell('Mark: all markings as a table', () => press(page, 'Show the markings as a table'));
}

async function atPrick(page: Page, tell: TellLongest): Promise<void> {
  const begin = page.getByRole('button', { name: 'Begin pricking' });
  await tell('Prick: the way through the holes', async () => {
    await goTo(page, 'Prick');
    await begin.waitFor({ timeout: LONG });
  });
  await tell('Prick: beginning', () => begin.click());
  await tell('Prick: a line done', () => press(page, 'Done, next'));
}

async function atVersions(page: Page, tell: TellLongest): Promise<void> {
  await tell('the earlier versions', () => press(page, 'Earlier versions'));
  await tell('going back to one', () =>
    page
      .getByRole('button', { name: /^Go back to/ })
      .first()
      .click(),
  );
}

async function undoAndRedo(page: Page, tell: TellLongest, stage: string): Promise<void> {
  await tell(`${stage}: undoing it`, () => press(page, 'Undo'));
  await tell(`${stage}: doing it again`, () => press(page, 'Redo'));
}
