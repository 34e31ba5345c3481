import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { downloaded, giveFile, goTo, jsonFile, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

const pattern = jsonFile('two.json', '{"pins":[{"x":0,"y":0},{"x":10,"y":0}]}');

/** Opens the pattern at the stage Pins, ready for pins to be added. */
async function begin(page: Page): Promise<void> {
  await openFile(page, pattern);
  await goTo(page, 'Pins');
  await page.getByText('adds a pin').click();
}

async function addPinAt(page: Page, across: number): Promise<void> {
  const box = (await page.locator('canvas.sheet').boundingBox())!;
  await page.mouse.click(box.x + box.width * across, box.y + box.height * 0.3);
}

const pins = (page: Page, count: number) => page.getByText(new RegExp(`^${count} pins\\.`)).waitFor();

test('in a second page the pattern can only be looked at, until it is taken over with all that was done', async () => {
  const { page, context } = await bench.visit();
  await begin(page);
  await addPinAt(page, 0.3);
  await pins(page, 3);
  const second = await context.newPage();
  await second.goto(page.url());
  await second.getByText('open in another page').waitFor();
  await addPinAt(page, 0.6);
  await pins(page, 4);
  await second.getByRole('button', { name: 'Take it over' }).click();
  await pins(second, 4);
  await second.getByText('open in another page').waitFor({ state: 'detached' });
  await page.getByText('open in another page').waitFor();
});

test('no room left: said at once and lastingly, with a way to save a file, and nothing is lost once there is room', async () => {
  const { page } = await bench.visit();
  await begin(page);
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
    Object.assign(globalThis, { makeRoom: () => Object.assign(IDBObjectStore.prototype, { put }) });
  });
  await addPinAt(page, 0.3);
  await page.getByText('NOT saved', { exact: true }).waitFor();
  await page.getByText('no room left').waitFor();
  const saved = await downloaded(page, () =>
    page.getByRole('button', { name: 'Save as a file' }).first().click(),
  );
  expect(saved.name).toMatch(/\.pinlight$/);
  await page.evaluate(() => (globalThis as unknown as { makeRoom: () => void }).makeRoom());
  await addPinAt(page, 0.6);
  await page.getByText('saved in this browser').waitFor();
  await page.reload();
  await pins(page, 4);
});

test('a browser that keeps nothing: the bench works, and says that nothing is saved', async () => {
  const context = await bench.browser().newContext();
  await context.addInitScript(() => {
    const refuse = () => {
      throw new DOMException('not here', 'SecurityError');
    };
    Object.defineProperty(globalThis, 'indexedDB', {
      configurable: true,
      writable: true,
      value: { open: refuse },
    });
  });
  const page = await context.newPage();
  await page.goto(bench.address());
  await begin(page);
  await addPinAt(page, 0.3);
  await pins(page, 3);
  await page.getByText('This browser keeps nothing').waitFor();
});

test('a store that a newer Pinlight wrote is left as it is', async () => {
  const { page } = await bench.visit();
  await page.goto('about:blank');
  await page.goto(`${bench.address()}icon.svg`);
  await page.evaluate(
    () =>
      new Promise((resolve) => {
        const opening = indexedDB.open('pinlight', 99);
        opening.onsuccess = () => {
          opening.result.close();
          resolve(null);
        };
      }),
  );
  await page.goto(bench.address());
  await page.getByText('last used with a newer Pinlight').waitFor();
});

test('a damaged pattern is said to be so and left as it is, and its earlier version becomes a pattern of its own', async () => {
  const { page } = await bench.visit();
  await begin(page);
  await addPinAt(page, 0.3);
  await page.getByText('saved in this browser').waitFor();
  await page.evaluate(
    () =>
      new Promise((resolve) => {
        const opening = indexedDB.open('pinlight');
        opening.onsuccess = () => {
          const write = opening.result.transaction('steps', 'readwrite');
          write.objectStore('steps').clear();
          write.oncomplete = () => {
            opening.result.close();
            resolve(null);
          };
        };
      }),
  );
  await page.reload();
  await page.getByText('is damaged, and was left as it is').waitFor();
  await page.getByRole('link', { name: 'To the shelf' }).click();
  await page.getByText('Damaged: open it to see what is left.').waitFor();
  await page.getByRole('button', { name: /^two\.json, / }).click();
  await page.getByRole('button', { name: /^Open as of .*, 2 pins$/ }).click();
  await goTo(page, 'Pins');
  await pins(page, 2);
  await page.getByRole('heading', { level: 1, name: 'two.json (earlier version)' }).waitFor();
});

test('a file of a newer Pinlight is refused kindly, and nothing comes on the shelf', async () => {
  const { page } = await bench.visit();
  const newer = { format: 'pinlight-pattern', version: 99, pins: [] };
  await giveFile(page, 'Open a file', jsonFile('newer.json', newer));
  await page.getByText('get a newer Pinlight to open it').waitFor();
  expect(await page.getByRole('listitem').count()).toBe(0);
});
