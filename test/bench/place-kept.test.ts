import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { choose, goTo, jsonFile, openFile, useBench } from '../support/bench/index.ts';
import { sheetAtRest } from '../support/bench/sheet.ts';

const bench = useBench();

/** More pins to the left than to the right, so that the card from the back is another sheet. */
const pins = [0, 4, 8, 12, 40].flatMap((x) => [0, 5, 10].map((y) => ({ x, y: y + x / 8 })));

async function seenAt(page: Page, stage: string): Promise<string> {
  await goTo(page, stage);
  await sheetAtRest(page);
  return page.locator('canvas.sheet').evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL());
}

async function closer(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Closer' }).press('Enter');
  await page.getByRole('button', { name: 'Closer' }).press('Enter');
}

test('what is seen of the sheet stays as it is from stage to stage', async () => {
  const { page } = await bench.visit();
  await openFile(page, jsonFile('pins.json', { pins }));
  const whole = await seenAt(page, 'Pins');
  await closer(page);
  const near = await seenAt(page, 'Pins');
  expect(near).not.toBe(whole);
  for (const stage of ['Mark', 'Size', 'Look over', 'Prick', 'Light', 'Pins']) {
    expect(await seenAt(page, stage), stage).toBe(near);
  }
});

test('after the card was seen from the back, and after another size, all of the pattern is shown', async () => {
  const { page } = await bench.visit();
  await openFile(page, jsonFile('pins.json', { pins }));
  const whole = await seenAt(page, 'Pins');
  await goTo(page, 'Prick');
  await page.getByRole('button', { name: 'Begin pricking' }).press('Enter');
  await choose(page, 'from the back');
  await closer(page);
  expect(await seenAt(page, 'Pins')).toBe(whole);

  await goTo(page, 'Size');
  await page.getByRole('combobox', { name: 'Make it' }).selectOption('a percentage');
  await page.getByLabel('Percentage of its size').fill('50 %');
  await page.getByLabel('Percentage of its size').press('Enter');
  await page.getByRole('region', { name: 'The new size' }).getByText('50 %').first().waitFor();
  await closer(page);
  expect(await seenAt(page, 'Pins')).toBe(whole);
});
