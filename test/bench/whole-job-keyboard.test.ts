import { expect, test } from 'vitest';
import { savedPattern, useBench } from '../support/bench/index.ts';
import { Keyboard } from '../support/bench/keyboard.ts';

const bench = useBench();

test('the whole job is done by keyboard alone', async () => {
  const { page, complaints, strangers } = await bench.visit();
  const keys = new Keyboard(page);
  const title = (words: string) => page.getByRole('heading', { level: 2, name: words }).waitFor();

  const paper = page.waitForEvent('filechooser');
  await keys.press('From paper');
  await (await paper).setFiles('examples/rosehip-edging.jpg');
  await title('Paper');
  await keys.press('Find the pins');
  await page
    .getByText(/in doubt/)
    .first()
    .waitFor();

  await keys.press('Next: Pins');
  await title('Pins');
  await keys.press(/^Go through the \d+ in doubt/);
  await keys.press('Yes, keep it');

  await keys.press('Next: Straighten');
  await title('Straighten');
  await page.getByRole('heading', { name: 'What was found' }).waitFor();
  await keys.press('Straighten');
  await page
    .getByText(/pins moved, the farthest by/)
    .first()
    .waitFor();

  await keys.press('Next: Mark');
  await title('Mark');

  await keys.press(/^Next: /);
  await keys.press('Next: Look over').catch(() => {});
  await title('Look over');
  expect((await savedPattern(page)).pins.length).toBeGreaterThan(500);
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
}, 120_000);
