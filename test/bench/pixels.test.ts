import { expect, test } from 'vitest';
import { goTo, jsonFile, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

test('where the scale is not known, places are shown and taken in pixels', async () => {
  const { page, complaints } = await bench.visit();
  const pins = [
    { x: 120.5, y: 40, diameter: 9 },
    { x: 300, y: 200 },
    { x: 50, y: 90 },
  ];
  await openFile(page, jsonFile('pixels.json', { unit: 'px', pins }));
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Show the pins as a table' }).click();
  const row = page.getByRole('row').nth(1);
  expect(await row.getByRole('cell').allTextContents()).toEqual(['120.5 px', '40 px', '9 px']);
  await row.getByRole('button').click();
  const across = page.getByLabel('Across');
  expect(await across.inputValue()).toBe('120.5 px');
  await across.fill('131,5');
  await across.press('Enter');
  await expect.poll(() => row.getByRole('cell').first().textContent()).toBe('131.5 px');
  await page.getByRole('button', { name: '10 px right' }).click();
  await expect.poll(() => row.getByRole('cell').first().textContent()).toBe('141.5 px');
  await across.fill('5 mm');
  await page.getByText('Type a number of pixels').waitFor();
  expect(await row.getByRole('cell').first().textContent()).toBe('141.5 px');
  expect(await page.getByRole('region', { name: 'The chosen pin' }).textContent()).not.toMatch(
    / mm|inch| in\b/,
  );
  expect(complaints).toEqual([]);
});
