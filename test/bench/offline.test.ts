import { expect, test } from 'vitest';
import { goTo, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

test('after one visit everything works without a network: a file is opened and a stage that was never seen', async () => {
  const { page, context, complaints } = await bench.visit();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => null));
  await context.setOffline(true);
  await page.reload();
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Look over');
  await page.getByText('Nothing to see to').waitFor();
  await page.reload();
  await page.getByText('Nothing to see to').waitFor();
  expect(complaints).toEqual([]);
});
