import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeContainer } from '#pattern/container/container.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { backupOf } from '../support/bench/backup-of.ts';
import { downloaded, giveFile, openFile, savedPattern, useBench } from '../support/bench/index.ts';

const bench = useBench();

/** Makes a backup as a person does, and gives back the file. */
async function backUp(page: Page): Promise<Buffer> {
  const { name, bytes } = await downloaded(page, () =>
    page.getByRole('button', { name: 'Back up everything' }).click(),
  );
  expect(name).toMatch(/^pinlight-backup-\d{4}-\d\d-\d\d\.zip$/);
  await page.getByText('are in the backup').waitFor();
  return bytes;
}

async function bringBack(page: Page, buffer: Buffer): Promise<void> {
  await giveFile(page, 'Bring back a backup', { name: 'backup.zip', mimeType: 'application/zip', buffer });
}

const toShelf = (page: Page) => page.getByRole('link', { name: 'Shelf' }).click();

/** What a backup says of its designs: the hash of every pattern with its pictures, and of every earlier version. */
function contentOf(backup: Buffer): string[] {
  const list = JSON.parse(strFromU8(unzipSync(backup)['backup.json']!)) as {
    designs: {
      id: string;
      name: string;
      file: { sha256: string };
      versions: { file: { sha256: string } }[];
      steps: { done: number; file: { sha256: string } };
    }[];
  };
  return list.designs
    .map(({ id, name, file, versions, steps }) =>
      [
        id,
        name,
        file.sha256,
        steps.done,
        steps.file.sha256,
        ...versions.map((version) => version.file.sha256),
      ].join(' '),
    )
    .sort();
}

/** A hash of every record in the store but those of this browser alone. */
const held = (page: Page) =>
  page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve) => {
      const opening = indexedDB.open('pinlight');
      opening.onsuccess = () => resolve(opening.result);
    });
    const all = (table: string, what: 'getAll' | 'getAllKeys') =>
      new Promise<unknown[]>((resolve) => {
        const asked = database.transaction(table).objectStore(table)[what]();
        asked.onsuccess = () => resolve(asked.result);
      });
    // The picture on the shelf is drawn whenever there is time for it.
    const text = (value: unknown) =>
      JSON.stringify(value, (key, inner) => {
        if (key === 'cover') return undefined;
        return inner instanceof ArrayBuffer ? [...new Uint8Array(inner)] : inner;
      });
    const told: string[] = [];
    for (const table of ['cards', 'pieces', 'steps', 'versionPieces', 'pictures', 'settings']) {
      const values = await all(table, 'getAll');
      for (const [index, key] of (await all(table, 'getAllKeys')).entries()) {
        if (key !== 'this-browser') told.push(`${table} ${key} ${text(values[index])}`);
      }
    }
    database.close();
    const bytes = new TextEncoder().encode(told.join());
    return [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))].join(' ');
  });

/** A pattern with the picture of its paper, as it is saved as a file. */
function withPicture(): Buffer {
  const picture = readFileSync('examples/rosehip-edging.jpg');
  const pattern: Pattern = {
    ...patternFromPins([
      { x: 1, y: 2 },
      { x: 3, y: 4 },
    ]),
    paper: {
      ...{ entry: 'paper.jpg', sha256: sha256Hex(picture), width: 100, height: 100 },
      toPattern: { a: 0.1, b: 0, c: 0, d: 0.1, e: 0, f: 0 },
    },
  };
  return Buffer.from(writeContainer({ pattern, pictures: new Map([['paper.jpg', picture]]) }));
}

test('everything is backed up in one file and comes back equal in another browser, and never twice', async () => {
  const one = await bench.visit();
  await openFile(one.page, { name: 'a.pinlight', mimeType: 'application/zip', buffer: withPicture() });
  await toShelf(one.page);
  await openFile(one.page, 'examples/drafted/ropewalk.json');
  await one.page.goto(`${bench.address()}#/design/${one.page.url().split('/').at(-2)}/pins`);
  await one.page.getByText('adds a pin').click();
  await one.page.locator('canvas.sheet').click({ position: { x: 40, y: 40 } });
  await one.page.getByText('saved in this browser').waitFor();
  await toShelf(one.page);
  const file = await backUp(one.page);
  expect(one.complaints).toEqual([]);

  const other = await bench.visit();
  await bringBack(other.page, file);
  await other.page.getByText('2 patterns came back').waitFor();
  const there = await held(other.page);
  await bringBack(other.page, file);
  await other.page.getByText('2 patterns were here already.').waitFor();
  expect(await held(other.page)).toEqual(there);
  const again = contentOf(await backUp(other.page));
  expect(again).toEqual(contentOf(file));
  expect(again.map((design) => design.split(' ').length)).toContain(6);

  // What was done in the one browser is undone in the other, and made again.
  await other.page.getByRole('button', { name: /pins$/ }).first().click();
  const { pins } = await savedPattern(other.page);
  await other.page.getByRole('button', { name: 'Undo' }).click();
  expect((await savedPattern(other.page)).pins).toEqual(pins.slice(0, -1));
  await other.page.getByText('saved in this browser').waitFor();
  await other.page.reload();
  await other.page.getByRole('button', { name: 'Redo' }).click();
  expect((await savedPattern(other.page)).pins).toEqual(pins);
  expect(other.complaints).toEqual([]);
  expect(other.strangers).toEqual([]);
});

test('damaged, foreign and newer files change nothing, and each is told in a sentence', async () => {
  const { page, complaints } = await bench.visit();
  await openFile(page, 'examples/rosehip-edging.json');
  await toShelf(page);
  const file = await backUp(page);
  const before = await held(page);
  for (const [bytes, sentence] of [
    [file.subarray(0, file.length - 40), 'damaged or cut off'],
    [file.subarray(0, 2000), 'damaged or cut off'],
    [Buffer.from('no backup at all'), 'This is not a backup of Pinlight'],
    [await readFile('examples/rosehip-edging.json'), 'This is not a backup of Pinlight'],
  ] as const) {
    await bringBack(page, bytes);
    await page.getByText(sentence).waitFor();
    await page.getByRole('button', { name: 'Understood' }).click();
  }
  expect(await held(page)).toEqual(before);
  await giveFile(page, 'Open a file', { name: 'backup.zip', mimeType: 'application/zip', buffer: file });
  await page.getByText('This is a backup of a whole shelf').waitFor();
  expect(complaints).toEqual([]);
});

test('how old the backup is, stands on the shelf; the browser is asked to keep everything after the first edit', async () => {
  const { page, complaints } = await bench.visit();
  await page.evaluate(() => {
    navigator.storage.persist = async () => {
      document.documentElement.dataset.asked = 'yes';
      return true;
    };
    navigator.storage.persisted = async () => document.documentElement.dataset.asked === 'yes';
  });
  const asked = () => page.evaluate(() => document.documentElement.dataset.asked ?? 'no');
  await openFile(page, 'examples/rosehip-edging.json');
  await toShelf(page);
  await page.getByText('none was made in this browser yet').waitFor();
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByText('has not promised to keep your patterns').waitFor();
  await page.goBack();
  await page.getByRole('button', { name: /pins$/ }).click();
  await page.getByText('adds a pin').click();
  expect(await asked()).toBe('no');
  await page.locator('canvas.sheet').click({ position: { x: 40, y: 40 } });
  await expect.poll(asked).toBe('yes');
  await toShelf(page);
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByText('This browser has promised to keep your patterns').waitFor();
  await page.goBack();
  await backUp(page);
  await page.getByText('Last backup: today, and nothing has changed since.').waitFor();
  expect(complaints).toEqual([]);
});

const many = (count: number) =>
  Array.from({ length: count }, (_, index) => ({
    name: `Edging ${index}`,
    pattern: patternFromPins([
      { x: index, y: 0 },
      { x: 0, y: 5 },
    ]),
  }));

test('bringing back can be stopped: what had come is told and stays, and the rest comes another time', async () => {
  const { page, complaints } = await bench.visit();
  const file = await backupOf(many(400));
  await bringBack(page, file);
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('button', { name: 'Stop' }).waitFor({ state: 'detached' });
  await bringBack(page, file);
  await page
    .getByText(/came back|were here already/)
    .first()
    .waitFor();
  await expect.poll(() => page.getByRole('listitem').count()).toBe(400);
  expect(complaints).toEqual([]);
});

test('no room for a whole backup: said in words, and what came is whole', async () => {
  const { page } = await bench.visit();
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    let left = 40;
    IDBObjectStore.prototype.put = function (...given) {
      if (left-- <= 0) throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, given);
    };
  });
  await bringBack(page, await backupOf(many(30)));
  await page.getByText('This browser has no room left').waitFor();
  const came = Number.parseInt((await page.getByText('had come back by then').textContent())!, 10);
  expect(came).toBeGreaterThan(0);
  await page.reload();
  await expect.poll(() => page.getByRole('listitem').count()).toBe(came);
  await page.getByRole('button', { name: `Edging ${came - 1}, 2 pins` }).click();
  await page.locator('canvas.sheet').waitFor();
});
