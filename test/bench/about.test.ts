import { expect, test } from 'vitest';
import { goTo, openFile, savedPattern, useBench } from '../support/bench/index.ts';

const bench = useBench();

test('who made a pattern and what may be done with it is written on the bench, step by step, and looked over', async () => {
  const { page, complaints } = await bench.visit();
  const buffer = Buffer.from(
    JSON.stringify({
      pins: [
        { x: 0, y: 0 },
        { x: 5, y: 0 },
        { x: 10, y: 0 },
      ],
    }),
  );
  await openFile(page, { name: 'three.json', mimeType: 'application/json', buffer });
  await goTo(page, 'Look over');
  await page.getByText('The pattern does not say who made it').waitFor();
  await page.getByRole('button', { name: 'About this pattern' }).click();
  await page.getByLabel('Who made it').fill('Ada Quayside <b>');
  await page.getByLabel('What you may do with it').fill('for my own use');
  await page.getByLabel('What you may do with it').press('Enter');
  await page.getByText('The pattern does not say who made it').waitFor({ state: 'detached' });
  expect((await savedPattern(page)).about).toEqual({
    maker: 'Ada Quayside <b>',
    permission: 'for my own use',
  });
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('The pattern does not say what may be done').waitFor();
  expect((await savedPattern(page)).about).toEqual({ maker: 'Ada Quayside <b>' });
  expect(complaints).toEqual([]);
});
