/** For how long the page is deaf while heavy work goes on beside it, in a real browser. */
import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { launchChromium } from '../../test/support/bench/browser.ts';
import { beginFromPaper, goTo, openFile } from '../../test/support/bench/pages.ts';
import { drawWholePage } from '../../test/support/whole-page.ts';
import { DEAF } from './tools/deaf.ts';
import { watchMainThread } from './tools/main-thread.ts';
import { largePattern, withFile } from './tools/patterns.ts';
import { tell, tellSpans } from './tools/report.ts';
import { measureServed } from './tools/served.ts';

const LONG = 600_000;

await measureServed(async (address) => {
  const browser = await launchChromium();
  await lookOver(browser, address);
  await traceWholePage(browser, address);
  await browser.close();
});

async function lookOver(browser: Browser, address: string): Promise<void> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(address);
  await withFile('pattern.json', JSON.stringify(largePattern(20_000)), (file) => openFile(page, file));
  await page.waitForTimeout(2000);
  const looking = await watchMainThread(browser, page, async () => {
    await goTo(page, 'Look over');
    await page.locator('.panel .places, .panel .message').first().waitFor({ timeout: LONG });
    await page.waitForTimeout(1000);
  });
  tellSpans('20000 pins: longest task, looking over', looking.tasks, 1, DEAF);
  await page.close();
}

async function traceWholePage(browser: Browser, address: string): Promise<void> {
  const { picture } = await drawWholePage(600);
  const { width, height, grey } = picture;
  const jpeg = await sharp(grey, { raw: { width, height, channels: 1 } })
    .withMetadata({ density: 600 })
    .jpeg({ quality: 90 })
    .toBuffer();
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(address);
  const name = 'A4 at 600 dpi';
  const opening = await watchMainThread(browser, page, async () => {
    await withFile('page.jpg', jpeg, (file) => beginFromPaper(page, file));
    await page.getByRole('button', { name: 'Find the pins' }).waitFor({ timeout: LONG });
    await page.waitForTimeout(3000);
  });
  tellSpans(`${name}: longest task, opening`, opening.tasks, 1, DEAF);
  const begun = performance.now();
  const tracing = await watchMainThread(browser, page, async () => {
    await page.getByRole('button', { name: 'Find the pins' }).click();
    await page.getByText(/^(\d+ pins? in doubt|None of them is in doubt)/).waitFor({ timeout: LONG });
    tell(`${name}: finding the pins`, (performance.now() - begun) / 1000, 's');
    await page.waitForTimeout(3000);
  });
  tellSpans(`${name}: longest task, finding the pins`, tracing.tasks, 1, DEAF);
  const { x, y, width: across, height: down } = (await page.locator('canvas.sheet').boundingBox())!;
  const panning = await watchMainThread(browser, page, async () => {
    await page.mouse.move(x + across / 2, y + down / 2);
    for (let step = 0; step < 60; step++) {
      await page.mouse.wheel(0, step < 30 ? -40 : 40);
      await page.waitForTimeout(16);
    }
    await page.mouse.down();
    for (let step = 0; step < 60; step++) await page.mouse.move(x + across / 2 + 3 * step, y + down / 2);
    await page.mouse.up();
    await page.waitForTimeout(2000);
  });
  tellSpans(`${name}: longest task, panning and zooming`, panning.tasks, 1, DEAF);
  await page.close();
}
