import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { downloaded, openFile, useBench } from '../support/bench/index.ts';
import { beginFromPaper } from '../support/bench/pages.ts';

const bench = useBench();
const SCAN = 'examples/rosehip-edging.jpg';

const pinsAreFound = async (page: Page) => {
  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByText('556 pins found.').waitFor();
};

test('where a browser keeps bytes and no files, as in a private window, scans and covers are kept all the same', async () => {
  const { page, context, complaints } = await bench.visit();
  await context.addInitScript(() => {
    const { put } = IDBObjectStore.prototype;
    const holdsFile = (value: unknown): boolean =>
      value instanceof Blob ||
      (typeof value === 'object' && value !== null && Object.values(value).some(holdsFile));
    IDBObjectStore.prototype.put = function (value, key) {
      if (holdsFile(value)) throw new DOMException('Error preparing Blob/File data', 'UnknownError');
      return put.call(this, value, key);
    };
  });
  await page.reload();
  await beginFromPaper(page, SCAN);
  await page.reload();
  await pinsAreFound(page);
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.locator('.cover > img').waitFor();
  await expect.poll(() => keptCover(page)).toBe('image/png');
  const back = await downloaded(page, () => page.getByRole('button', { name: 'Back up everything' }).click());
  expect(back.bytes.length).toBeGreaterThan(600_000);
  expect(complaints).toEqual([]);
});

test('a scan that an earlier bench kept as a file is read as ever', async () => {
  const { page, complaints } = await bench.visit();
  await beginFromPaper(page, SCAN);
  expect(await asFiles(page)).toBe(1);
  await page.reload();
  await pinsAreFound(page);
  await page.getByRole('link', { name: 'Shelf' }).click();
  await openFile(page, 'examples/rosehip-edging.json');
  expect(complaints).toEqual([]);
});

/** Of what kind the kept cover of the one design is, or null while there is none. */
const keptCover = (page: Page): Promise<string | null> =>
  page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve) => {
      const opening = indexedDB.open('pinlight');
      opening.onsuccess = () => resolve(opening.result);
    });
    const asked = database.transaction('cards').objectStore('cards').getAll();
    await new Promise((resolve) => {
      asked.onsuccess = resolve;
    });
    database.close();
    return asked.result[0]?.cover?.picture.type ?? null;
  });

/** Puts files in place of the bytes of all kept pictures; tells how many. */
const asFiles = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve) => {
      const opening = indexedDB.open('pinlight');
      opening.onsuccess = () => resolve(opening.result);
    });
    const write = database.transaction('pictures', 'readwrite');
    const store = write.objectStore('pictures');
    let many = 0;
    store.openCursor().onsuccess = ({ target }) => {
      const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result;
      if (!cursor) return;
      const { bytes, type } = cursor.value as { bytes: ArrayBuffer; type: string };
      cursor.update(new Blob([bytes], { type }));
      many++;
      cursor.continue();
    };
    await new Promise((resolve) => {
      write.oncomplete = resolve;
    });
    database.close();
    return many;
  });
