/**
 * The first visit in a real browser: bytes of script, as a server sends them packed, and how soon the bench can be used,
 * the first time and later without a network. A browser of its own for each round.
 */
import { gzipSync } from 'node:zlib';
import type { BrowserContext, Page } from 'playwright-core';
import { launchChromium } from '../../test/support/bench/browser.ts';
import { quantile } from './tools/main-thread.ts';
import { tell } from './tools/report.ts';
import { measureServed } from './tools/served.ts';

const ROUNDS = 7;

/** What has to be there before a person can begin: on the shelf the button that opens a file, else a painted sheet. */
type Usable = 'shelf' | 'sheet';

await measureServed(measureLoading);

async function measureLoading(address: string): Promise<void> {
  await measureScripts(address, 'shelf', '', 300);
  await measureScripts(address, 'sheet', '#/example', 300);
  const times = new Map<string, number[]>();
  const take = (name: string, ms: number) => times.set(name, [...(times.get(name) ?? []), ms]);
  for (let round = 0; round < ROUNDS; round++) {
    // A browser of its own each time: nothing kept, nothing compiled.
    const browser = await launchChromium();
    const cold = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    take('shelf, first visit', await timeToUsable(cold, address, 'shelf'));
    const other = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    const page = await other.newPage();
    take('example on the sheet, first visit', await timeOf(page, 'sheet', `${address}#/example`));
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => null));
    const design = page.url();
    await other.setOffline(true);
    take('sheet, without a network', await timeToUsable(other, design, 'sheet'));
    take('shelf, without a network', await timeToUsable(other, address, 'shelf'));
    await browser.close();
  }
  for (const [name, all] of times) {
    tell(`usable: ${name}, median of ${ROUNDS}`, quantile(all, 0.5), 'ms', /first/.test(name) ? 2000 : 1000);
    tell(`usable: ${name}, longest`, Math.max(...all), 'ms');
  }
}

async function timeToUsable(context: BrowserContext, address: string, usable: Usable): Promise<number> {
  const page = await context.newPage();
  const time = await timeOf(page, usable, address);
  await page.close();
  return time;
}

/** Milliseconds from the navigation's start to the first frame on which it can be used. */
async function timeOf(page: Page, usable: Usable, address: string): Promise<number> {
  await page.addInitScript((usable) => {
    const isUsable = () => {
      if (usable === 'shelf') return /Open a file/.test(document.body?.textContent ?? '');
      const sheet = document.querySelector<HTMLCanvasElement>('canvas.sheet');
      const panel = document.querySelector('.panel')?.textContent ?? '';
      if (!sheet || sheet.width < 301 || panel.length < 80) return false;
      const { data } = sheet.getContext('2d')!.getImageData(0, 0, sheet.width, sheet.height);
      for (let index = 0; index < data.length; index += 4)
        if (data[index]! < 60 && data[index + 3]) return true;
      return false;
    };
    const ask = () => {
      if (!isUsable()) return requestAnimationFrame(ask);
      // What is asked for in one frame is seen in the next.
      requestAnimationFrame(() => Object.assign(window, { usableAt: performance.now() }));
    };
    requestAnimationFrame(ask);
  }, usable);
  await page.goto(address);
  await page.waitForFunction(() => 'usableAt' in window);
  return page.evaluate(() => (window as unknown as { usableAt: number }).usableAt);
}

async function measureScripts(address: string, usable: Usable, hash: string, limit: number): Promise<void> {
  const browser = await launchChromium();
  const page = await browser.newPage();
  const scripts = new Map<string, Promise<Buffer>>();
  page.on('response', (response) => {
    const isScript = /javascript/.test(response.headers()['content-type'] ?? '');
    if (isScript && !response.fromServiceWorker() && !/service-worker/.test(response.url()))
      scripts.set(response.url(), response.body());
  });
  await timeOf(page, usable, `${address}${hash}`);
  await page.waitForLoadState('networkidle');
  page.removeAllListeners('response');
  const sizes = await Promise.all([...scripts.values()].map(async (body) => gzipSync(await body).length));
  await browser.close();
  const kilobytes = sizes.reduce((sum, size) => sum + size, 0) / 1000;
  tell(`script, gzipped: ${usable}, ${sizes.length} files`, kilobytes, 'kB', limit);
}
