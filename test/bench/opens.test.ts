import { expect, test } from 'vitest';
import { goTo, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

test('a pattern file is opened, looked over, and still there after a reload', async () => {
  const { page, complaints, strangers } = await bench.visit();
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Look over');
  await page.getByText('Nothing to see to').waitFor();
  await page.reload();
  await page.getByText('Nothing to see to').waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.getByRole('button', { name: /pins$/ }).waitFor();
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});
