import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Hands } from '../support/bench/hands.ts';
import { downloaded, savedPattern, useBench, type Visit } from '../support/bench/index.ts';
import { keyboardHands } from '../support/bench/keyboard.ts';
import { touchHands } from '../support/bench/touch.ts';

const bench = useBench();

const atStage = (page: Page, title: string) =>
  page.getByRole('heading', { level: 2, name: title, exact: true }).waitFor();

/** From the scan on the shelf to the card that was held to the light, with one pair of hands. */
async function wholeJob({ page, complaints, strangers }: Visit, hands: Hands, fromPaper: readonly string[]) {
  const paper = page.waitForEvent('filechooser');
  for (const button of fromPaper) await hands.press(button);
  await (await paper).setFiles('examples/rosehip-edging.jpg');
  await atStage(page, 'Paper');
  await hands.press('Find the pins');
  await page
    .getByText(/in doubt/)
    .first()
    .waitFor();

  await hands.press('Next: Pins');
  await atStage(page, 'Pins');
  const count = async () => Number.parseInt((await page.getByText(/^\d+ pins\./).textContent())!, 10);
  const found = await count();
  await hands.press(/^Go through the \d+ in doubt/);
  await hands.press('Yes, keep it');
  await hands.choose(/^adds a pin/);
  await hands.touchSheet(-260, 0);
  await expect.poll(count).toBe(found + 1);
  await hands.press('Undo');
  await expect.poll(count).toBe(found);

  await hands.press('Next: Straighten');
  await atStage(page, 'Straighten');
  await page.getByRole('heading', { name: 'What was found' }).waitFor();
  await hands.press('Straighten');
  await page
    .getByText(/pins moved, the farthest by/)
    .first()
    .waitFor();

  await hands.press('Next: Mark');
  await atStage(page, 'Mark');
  await hands.choose(/^writes words/);
  await hands.touchSheet(-260, 0);
  await hands.type('Words for this place', 'Begin here');
  await hands.press('Write them');

  await hands.press('Next: Size');
  await atStage(page, 'Size');
  await hands.press('Next: Look over');
  await atStage(page, 'Look over');
  await page
    .getByRole('listitem')
    .filter({ hasText: /^(Fault|Warning|Note) / })
    .or(page.getByText('Nothing to see to'))
    .first()
    .waitFor();

  await hands.press('Next: Make');
  await atStage(page, 'Make');
  await hands.choose(/^A4/);
  await page.getByText(/^The pins reach/).waitFor();
  const pdf = await downloaded(page, () => hands.press('Make the PDF for A4'));
  expect(pdf.name).toMatch(/\.pdf$/);

  await hands.press('Next: Prick');
  await atStage(page, 'Prick');
  await hands.press('Begin pricking');
  await page.getByText(/^Step 1 of/).waitFor();
  await page.waitForTimeout(350);
  await hands.press('Done, next');
  await page.getByText(/^Step 2 of/).waitFor();

  await hands.press('Next: Light');
  await atStage(page, 'Light');
  const photo = page.waitForEvent('filechooser');
  await hands.press('Choose a photo');
  await (await photo).setFiles('examples/rosehip-card.jpg');
  await page.getByText(/^Held to the light/).waitFor();

  expect((await savedPattern(page)).pins.length).toBe(found);
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
}

test('the whole job is done by keyboard alone', async () => {
  const visit = await bench.visit();
  await wholeJob(visit, keyboardHands(visit.page), ['From paper']);
}, 180_000);

test('the whole job is done by touch alone', async () => {
  const visit = await bench.visit({ viewport: { width: 820, height: 1180 }, hasTouch: true });
  await wholeJob(visit, touchHands(visit.page), ['From paper', 'Choose a picture']);
}, 180_000);
