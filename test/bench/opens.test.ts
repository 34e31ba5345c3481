import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from '../support/bench/browser.ts';
import { startBench } from '../support/bench/serve.ts';

let browser: Browser;
let bench: Awaited<ReturnType<typeof startBench>>;
let page: Page;
const said: string[] = [];

beforeAll(async () => {
  [bench, browser] = await Promise.all([startBench(), launchChromium()]);
  page = await browser.newPage();
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', (error) => said.push(error.message));
});

afterAll(async () => {
  await browser?.close();
  await bench?.close();
});

test('a pattern file is opened, looked over, and still there after a reload', async () => {
  await page.goto(bench.address);
  const chosen = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  await (await chosen).setFiles('examples/rosehip-edging.json');
  await page.getByRole('link', { name: 'Look over' }).waitFor();
  await page.getByText('Nothing to see to').waitFor();
  await page.reload();
  await page.getByText('Nothing to see to').waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.getByRole('button', { name: /pins$/ }).waitFor();
  expect(said).toEqual([]);
});
