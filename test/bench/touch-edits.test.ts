import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type At, Fingers } from '../support/bench/fingers.ts';
import { goTo, openFile, useBench } from '../support/bench/index.ts';
import { fileOfPins, placesOf, sheetAtRest } from '../support/bench/sheet.ts';

const bench = useBench();

const pinCount = (page: Page, count: number) => page.getByText(`${count} pins.`).waitFor();
const by = ([x, y]: At, right: number, down: number): At => [x + right, y + down];

/** Pins at the stage Pins, where a touch adds one. */
async function addingTo(pins: readonly { readonly x: number; readonly y: number }[]) {
  const { page } = await bench.visit({ hasTouch: true });
  await openFile(page, fileOfPins(pins));
  await goTo(page, 'Pins');
  await page.getByText('adds a pin').tap();
  await expect.poll(() => page.getByRole('radio', { name: 'adds a pin' }).isChecked()).toBe(true);
  await sheetAtRest(page);
  return { page, fingers: await Fingers.on(page) };
}

test('two hundred steps are undone one by one after the page was loaded anew', async () => {
  const corners = [0, 30].flatMap((x) => [0, 30].map((y) => ({ x, y })));
  const { page, fingers } = await addingTo(corners);
  const [middle] = await placesOf(page, corners);
  for (let step = 0; step < 200; step++) {
    await fingers.tap(by(middle!, 30 + 12 * (step % 20), 40 + 24 * Math.floor(step / 20)));
  }
  await pinCount(page, 204);
  await page.getByText('saved in this browser').waitFor();
  await page.reload();
  await pinCount(page, 204);
  const undo = page.getByRole('button', { name: 'Undo' });
  await undo.focus();
  for (let step = 0; step < 200; step++) await page.keyboard.press('Enter');
  await pinCount(page, 4);
  expect(await undo.isDisabled()).toBe(true);
});

test('a pin falls into the gap of a net, unless one does not want that', async () => {
  const net = Array.from({ length: 49 }, (_, at) => ({ x: 4 * (at % 7), y: 4 * Math.floor(at / 7) }));
  const gap = net[24]!;
  const pins = net.filter((pin) => pin !== gap);
  const { page, fingers } = await addingTo(pins);
  const place = (await placesOf(page, [...pins, gap])).at(-1)!;
  const across = page.getByRole('textbox', { name: 'Across' });
  await fingers.tap(by(place, 6, -5));
  await pinCount(page, 49);
  expect(await across.inputValue()).toBe('12 mm');
  await page.getByRole('button', { name: 'Undo' }).tap();
  await pinCount(page, 48);
  const inLine = page.getByRole('switch', { name: 'Pins fall in line with their neighbours' });
  expect(await inLine.isChecked()).toBe(true);
  await page.getByText('Pins fall in line with their neighbours').tap();
  await expect.poll(() => inLine.isChecked()).toBe(false);
  await fingers.tap(by(place, 6, -5));
  await pinCount(page, 49);
  expect(await across.inputValue()).not.toBe('12 mm');
});
