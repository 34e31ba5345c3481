import { expect, test } from 'vitest';
import { useBench } from '../support/bench/index.ts';

const bench = useBench();

test('the example is put on the shelf once, however often it is asked for', async () => {
  const { page, complaints } = await bench.visit();
  await page.goto(`${bench.address()}#/example`);
  await page.locator('canvas.sheet').waitFor();
  await page.goto(`${bench.address()}#/example`);
  await page.locator('canvas.sheet').waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.getByRole('button', { name: /pins$/ }).waitFor();
  expect(await page.getByRole('button', { name: /pins$/ }).count()).toBe(1);
  expect(complaints).toEqual([]);
});
