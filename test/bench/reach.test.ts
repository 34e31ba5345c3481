import { expect, test } from 'vitest';
import { useBench } from '../support/bench/index.ts';
import { cutOff, smallOrCrowded, smallWords } from '../support/bench/measure-page.ts';
import { onEveryScreen } from '../support/bench/screens.ts';

const bench = useBench();

test.each([
  ['a wide screen', { width: 1280, height: 800 }],
  ['an upright tablet', { width: 820, height: 1180 }],
  ['a phone', { width: 390, height: 844 }],
])(
  'on %s every control is 44 pixels large and 8 from the next, and every word 16 high',
  async (_, viewport) => {
    const { page } = await bench.visit({ viewport, hasTouch: true });
    const found = await onEveryScreen(page, async () => [
      ...(await smallOrCrowded(page)),
      ...(await smallWords(page)),
      ...(await cutOff(page)),
    ]);
    expect(found).toEqual([]);
  },
);

test.each([
  ['with text twice as large, 320 pixels wide', '2', { width: 320, height: 640 }],
  ['at four times the browser’s zoom', '1', { width: 320, height: 256 }],
  ['with text twice as large on a wide screen', '2', { width: 1280, height: 800 }],
])('%s nothing is cut off and nothing scrolls sideways', async (_, text, viewport) => {
  const { page } = await bench.visit({ viewport, hasTouch: true });
  await page.evaluate((size) => {
    localStorage.setItem('pinlight-preferences', JSON.stringify({ text: Number(size) }));
  }, text);
  await page.reload();
  const found = await onEveryScreen(page, async () => [
    ...(await cutOff(page)),
    ...(await smallOrCrowded(page)),
  ]);
  expect(found).toEqual([]);
});
