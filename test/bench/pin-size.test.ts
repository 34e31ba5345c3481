import { expect, test } from 'vitest';
import { goTo, jsonFile, openFile, savedPattern, useBench } from '../support/bench/index.ts';

const bench = useBench();

test('the size of a pin is typed, read in the table, refused where it is none, taken away and undone, by keyboard alone', async () => {
  const { page, complaints } = await bench.visit();
  await openFile(page, jsonFile('pins.json', { pins: [0, 5, 10].map((x) => ({ x, y: 0 })) }));
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Show the pins as a table' }).press('Enter');
  const row = page.getByRole('row').nth(2);
  await row.getByRole('button').press('Enter');
  const size = page.getByLabel('Size', { exact: true });
  const sizes = async () => (await savedPattern(page)).pins.map(({ diameter }) => diameter);

  await size.fill('-1');
  await size.press('Enter');
  await page.getByText('This must be more than nought.').waitFor();
  expect(await sizes()).toEqual([undefined, undefined, undefined]);

  await size.fill('0,8');
  await size.press('Enter');
  await row.getByText('0.8 mm').waitFor();
  expect(await sizes()).toEqual([undefined, 0.8, undefined]);

  await size.fill('');
  await size.press('Enter');
  await row.getByText('0.8 mm').waitFor({ state: 'detached' });
  expect(await sizes()).toEqual([undefined, undefined, undefined]);
  await page.getByRole('button', { name: 'Undo' }).press('Enter');
  expect(await sizes()).toEqual([undefined, 0.8, undefined]);
  expect(complaints).toEqual([]);
});
