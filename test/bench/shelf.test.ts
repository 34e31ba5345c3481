import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from '../support/bench/access.ts';
import { goTo, jsonFile, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

/** Which pixels of a picture are dark. */
const pixelsOf = (picture: Locator): Promise<number[]> =>
  picture.evaluate(async (image: HTMLImageElement) => {
    await image.decode();
    const canvas = new OffscreenCanvas(image.naturalWidth, image.naturalHeight);
    const brush = canvas.getContext('2d')!;
    brush.drawImage(image, 0, 0);
    const { data } = brush.getImageData(0, 0, canvas.width, canvas.height);
    return [...data.keys()].filter((index) => index % 4 === 0 && data[index]! < 128);
  });

test('patterns on the shelf are renamed, found by name, and removed only after being asked once more', async () => {
  const { page, complaints } = await bench.visit();
  await page.getByText('The shelf is empty').waitFor();
  await openFile(page, 'examples/rosehip-edging.json');
  await page.getByRole('link', { name: 'Shelf' }).click();
  await openFile(page, 'examples/drafted/ropewalk.json');
  await page.getByRole('link', { name: 'Shelf' }).click();
  const items = page.getByRole('listitem');
  await expect.poll(() => items.count()).toBe(2);

  await page.getByRole('button', { name: 'Rename Ropewalk' }).click();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Rope <b>walk</b>');
  await page.getByRole('button', { name: 'Keep this name' }).click();
  await page.getByRole('button', { name: /^Rope <b>walk<\/b>, / }).waitFor();
  await page.getByLabel('Look for a name').fill('rope');
  await expect.poll(() => items.count()).toBe(1);

  await page.getByRole('button', { name: /^Remove Rope/ }).click();
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('button', { name: /^Remove Rope/ }).click();
  await page.getByRole('button', { name: 'Remove it', exact: true }).click();
  await page.getByText('was removed').waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: /^Rope/ }).waitFor();
  await page.getByRole('button', { name: /^Remove Rope/ }).click();
  await page.getByRole('button', { name: 'Remove it', exact: true }).click();
  await page.getByLabel('Look for a name').waitFor({ state: 'detached' });
  expect(complaints).toEqual([]);
});

test('settings hold at once and after a reload, and shut nobody out', async () => {
  const { page } = await bench.visit();
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByText('inches', { exact: true }).click();
  await page.getByText('a comma: 2,5').click();
  await page.getByText('dark', { exact: true }).click();
  await page.getByText('twice as large').click();
  expect(await violations(page)).toEqual([]);
  await page.reload();
  expect(await page.getByRole('radio', { name: 'inches' }).isChecked()).toBe(true);
  await page.getByRole('link', { name: 'Shelf' }).click();
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Show the pins as a table' }).click();
  await page
    .getByRole('cell', { name: /^\d+(,\d+)? in$/ })
    .first()
    .waitFor();
});

test('an earlier version is gone back to as one step, which can be undone', async () => {
  const { page } = await bench.visit();
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Pins');
  const count = async () => Number.parseInt((await page.getByText(/^\d+ pins\./).textContent())!, 10);
  const before = await count();
  await page.getByText('adds a pin').click();
  await page.locator('canvas.sheet').click({ position: { x: 30, y: 30 } });
  await expect.poll(count).toBe(before + 1);
  await page.getByText('saved in this browser').waitFor();
  await page.getByRole('button', { name: 'Earlier versions' }).click();
  await page.getByRole('button', { name: /^Go back to/ }).click();
  await expect.poll(count).toBe(before);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(count).toBe(before + 1);
});

test('a hundred patterns show at once, with their pictures, and are found by name, maker and kind of lace', async () => {
  const { page, complaints } = await bench.visit();
  await page.waitForFunction(() => document.querySelector('h1') !== null);
  // Put into the store as the shelf's own code does: a card, and the pieces of the pattern.
  await page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve) => {
      const opening = indexedDB.open('pinlight');
      opening.onsuccess = () => resolve(opening.result);
    });
    const write = database.transaction(['cards', 'pieces'], 'readwrite');
    for (let number = 0; number < 100; number++) {
      const id = `design-${number}`;
      const pins = Array.from({ length: 400 }, (_, index) => ({
        id: `p${index + 1}`,
        x: (index % 20) * 2 + (number % 3),
        y: Math.floor(index / 20) * 2,
      }));
      const about = {
        maker: number === 7 ? 'Ágota Éles' : 'Somebody',
        lace: number % 2 ? 'Torchon' : 'Bucks',
      };
      write.objectStore('cards').put({
        ...{ id, name: `Edging ${number}`, created: 1, changed: Date.now() - number * 1000 },
        ...{ revision: 1, first: 0, done: 0, at: 0, pins: pins.length },
      });
      const rest = { unit: 'mm', about, sizes: {}, scale: { from: 'none' } };
      write.objectStore('pieces').put(rest, [id, 'rest', 0]);
      write.objectStore('pieces').put(pins, [id, 'pins', 0]);
    }
    await new Promise((resolve) => {
      write.oncomplete = resolve;
    });
    database.close();
  });
  await page.reload();
  const shown = await page.evaluate(async () => {
    while (document.querySelectorAll('.shelf-item').length < 100) await new Promise(requestAnimationFrame);
    return performance.now();
  });
  expect(shown).toBeLessThan(2500);
  const first = page.getByRole('listitem').first();
  await first.getByText('Edging 0', { exact: true }).waitFor();
  await first.getByText('400 pins').waitFor();
  await first.getByText(/^Changed today at/).waitFor();
  const pictures = () => page.locator('.cover > img[src^="blob:"]').count();
  await expect.poll(pictures, { timeout: 30_000 }).toBe(100);
  const ink = (await pixelsOf(first.locator('img'))).length;
  expect(ink).toBeGreaterThan(400);

  const items = page.getByRole('listitem');
  const sought = page.getByLabel('Look for a name');
  await sought.fill('agota');
  await expect.poll(() => items.count()).toBe(1);
  await sought.fill('bucks edging');
  await expect.poll(() => items.count()).toBe(50);
  await page.reload();
  await expect.poll(pictures).toBe(100);
  expect(complaints).toEqual([]);
});

test('the picture of a pattern follows what is done to it', async () => {
  const { page } = await bench.visit();
  await openFile(page, jsonFile('one.json', '{"pins":[{"x":0,"y":0},{"x":90,"y":60}]}'));
  const picture = async () => (await pixelsOf(page.locator('.cover > img'))).join(' ');
  await page.getByRole('link', { name: 'Shelf' }).click();
  const before = await picture();
  await page.getByRole('button', { name: /^one/ }).click();
  await goTo(page, 'Pins');
  await page.getByText('adds a pin').click();
  await page.locator('canvas.sheet').click({ position: { x: 300, y: 200 } });
  await page.getByText('saved in this browser').waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.getByText('3 pins').waitFor();
  await expect.poll(picture).not.toBe(before);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`nobody is shut out of a shelf with patterns, questions and messages on it, in the ${colorScheme} look`, async () => {
    const { page } = await bench.visit({ colorScheme });
    await openFile(page, 'examples/rosehip-edging.json');
    await page.getByRole('link', { name: 'Shelf' }).click();
    await openFile(page, 'examples/drafted/ropewalk.json');
    await page.getByRole('link', { name: 'Shelf' }).click();
    // Time goes by.
    await page.evaluate(() => {
      const { now } = Date;
      Date.now = () => now() + 9 * 24 * 60 * 60 * 1000;
    });
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.goBack();
    await page.getByText('Browsers may throw away what they keep').waitFor();
    await page.getByRole('button', { name: 'Rename Rosehip edging' }).click();
    await page.getByRole('button', { name: 'Remove Ropewalk' }).click();
    await expect.poll(() => page.locator('.cover > img').count()).toBe(2);
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Remove it', exact: true }).click();
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page
      .getByText('Last backup: none')
      .locator('../..')
      .getByRole('button', { name: 'Understood' })
      .click();
    await page.getByText('Browsers may throw away what they keep').waitFor({ state: 'detached' });
    await page.getByText('Last backup: none').waitFor();
  });
}
