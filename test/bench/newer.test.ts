import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serveBench } from '../../scripts/serve-bench.mjs';
import { goTo, jsonFile, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();
const folder = mkdtempSync(join(tmpdir(), 'pinlight-newer-'));
let server: Awaited<ReturnType<typeof serveBench>>;

beforeAll(async () => {
  cpSync('dist/bench', folder, { recursive: true });
  server = await serveBench({ port: 0, folder });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Puts another build in the place of the one that is served. */
function publishNewer(mark: string): void {
  const page = join(folder, 'index.html');
  writeFileSync(
    page,
    readFileSync(page, 'utf8').replace(/<html[^>]*>/, `<html lang="en" data-build="${mark}">`),
  );
  const worker = join(folder, 'service-worker.js');
  const text = readFileSync(worker, 'utf8');
  const [, build] = /([0-9a-f]{12})`/.exec(text)!;
  writeFileSync(worker, text.replace(build!, mark));
}

const builtAs = (page: Page) => page.evaluate(() => document.documentElement.dataset.build ?? 'first');
const pins = (page: Page, count: number) => page.getByText(new RegExp(`^${count} pins`)).waitFor();

test('a newer Pinlight waits for the person, takes over in one reload once all is saved, and tells the other page', async () => {
  const context = await bench.browser().newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  await page.goto(server.address);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => null));
  await openFile(page, jsonFile('two.json', '{"pins":[{"x":0,"y":0},{"x":10,"y":0}]}'));
  await goTo(page, 'Pins');
  const other = await context.newPage();
  await other.goto(server.address);
  await other.getByRole('button', { name: /2 pins$/ }).waitFor();

  publishNewer('0123456789ab');
  await page.evaluate(() => navigator.serviceWorker.getRegistration().then((one) => one?.update()));
  await page.getByText('A newer Pinlight is here').waitFor();
  expect(await builtAs(page)).toBe('first');
  // The store is held for a while, so that what is done next cannot be put away at once.
  await page.evaluate(() => {
    const opening = indexedDB.open('pinlight');
    opening.onsuccess = () => {
      const until = performance.now() + 1500;
      const store = opening.result.transaction(['cards'], 'readwrite').objectStore('cards');
      const hold = () => {
        if (performance.now() < until) store.count().onsuccess = hold;
      };
      hold();
    };
  });
  let loads = 0;
  page.on('load', () => loads++);
  await page.getByText('adds a pin').click();
  await page.locator('canvas.sheet').click({ position: { x: 300, y: 200 } });
  await pins(page, 3);
  await page.getByText('saving').waitFor();
  await page.getByRole('button', { name: 'Change to it now' }).click();
  await expect.poll(() => builtAs(page).catch(() => '')).toBe('0123456789ab');
  await pins(page, 3);
  expect(loads).toBe(1);
  expect(await page.getByText('A newer Pinlight').count()).toBe(0);

  await other.getByText('was begun in another page').waitFor();
  await other.getByRole('button', { name: 'Load the page anew' }).click();
  await expect.poll(() => builtAs(other).catch(() => '')).toBe('0123456789ab');
  await other.getByRole('button', { name: /3 pins$/ }).waitFor();
  await context.close();
});
