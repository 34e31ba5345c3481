import { expect, test } from 'vitest';
import { choose, downloaded, giveFile, goTo, useBench } from '../support/bench/index.ts';
import { makeOlder } from '../support/bench/older.ts';
import { beginFromPaper } from '../support/bench/pages.ts';

const bench = useBench();

test('the work is done from scan to pricked card in a browser that lacks all that came later than the oldest', async () => {
  const { page, context, complaints } = await bench.visit({ serviceWorkers: 'block' });
  const older = await makeOlder(context);
  await page.reload();
  expect(await page.evaluate(() => 'withResolvers' in Promise || 'storage' in navigator)).toBe(false);
  await beginFromPaper(page, 'examples/rosehip-edging.jpg');
  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByText('556 pins found.').waitFor();
  await goTo(page, 'Straighten');
  await page.getByRole('button', { name: 'Straighten', exact: true }).click();
  await page
    .getByText(/pins moved, the farthest by/)
    .first()
    .waitFor();
  await goTo(page, 'Mark');
  await choose(page, 'tints an area');
  await goTo(page, 'Size');
  await page.getByRole('heading', { name: 'Your threads' }).waitFor();
  await goTo(page, 'Look over');
  await page
    .getByText(/^(Fault|Warning)/)
    .first()
    .waitFor();
  await goTo(page, 'Make');
  await choose(page, 'A4');
  const pdf = await downloaded(page, () => page.getByRole('button', { name: 'Make the PDF for A4' }).click());
  expect(pdf.bytes.subarray(0, 5).toString()).toBe('%PDF-');
  await goTo(page, 'Prick');
  await page.getByRole('button', { name: 'Begin pricking' }).click();
  await page.getByText(/^Step 1 of/).waitFor();
  await page.getByText(/^This browser cannot keep the screen awake/).waitFor();
  await goTo(page, 'Light');
  await giveFile(page, 'Choose a photo', 'examples/rosehip-card.jpg');
  await page.getByText(/^Held to the light/).waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.locator('.cover > img').waitFor();
  await downloaded(page, () => page.getByRole('button', { name: 'Back up everything' }).click());
  expect(older.workers()).toBeGreaterThan(1);
  expect(complaints.filter((words) => !words.includes('blocked by Playwright'))).toEqual([]);
}, 90_000);

test.each(['OffscreenCanvas', 'BroadcastChannel', 'toSorted'])(
  'a browser without %s is told which are new enough',
  async (lacking) => {
    const { page, context, complaints } = await bench.visit();
    await context.addInitScript((name) => {
      delete (globalThis as Record<string, unknown>)[name];
      delete (Array.prototype as unknown as Record<string, unknown>)[name];
    }, lacking);
    await page.reload();
    const words = page.getByRole('alert');
    await words.getByText('This browser is too old for Pinlight.').waitFor();
    for (const name of ['Safari from 16.4', 'Firefox from 115', 'Chrome or Edge from 110']) {
      expect(await words.textContent()).toContain(name);
    }
    expect(complaints).toEqual([]);
  },
);
