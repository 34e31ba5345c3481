/**
 * How the sheet answers the hand while a guiding point is dragged, with the lace drafted anew beside it all the while,
 * and whether the drag's end is kept. The recipes with the most lines and with the most to draft.
 */
import type { Browser } from 'playwright-core';
import { guidesOf } from '#craft/draft/guides/guides.ts';
import { boxOfPattern } from '#pattern/pins.ts';
import { cameraOn, toScreen } from '../../src/bench/sheet/camera.ts';
import { launchChromium } from '../../test/support/bench/browser.ts';
import { commanded, fromRecipe } from '../../test/support/bench/draft.ts';
import { watchMainThread } from './tools/main-thread.ts';
import { tell, tellSpans } from './tools/report.ts';
import { measureServed } from './tools/served.ts';

const STEPS = 120;

await measureServed(async (address) => {
  for (const name of ['flower-and-leaves', 'window-sampler', 'tidal-flower']) {
    const browser = await launchChromium();
    await dragPoint(browser, address, name);
    await browser.close();
  }
});

async function dragPoint(browser: Browser, address: string, name: string): Promise<void> {
  const pattern = commanded(name, {});
  const { about, recipe } = pattern;
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(address);
  await fromRecipe(page, new RegExp(`^${about.name}`));
  await page.waitForTimeout(2000);
  const { x, y, width, height } = (await page.locator('canvas.sheet').boundingBox())!;
  const view = { width, height };
  const camera = cameraOn(boxOfPattern(pattern), view);
  const { left, top } = toScreen(camera, view, guidesOf(recipe!)[0]!.points[1]!);
  const to = (dx: number, dy: number) => page.mouse.move(x + left + dx, y + top + dy);
  const drag = await watchMainThread(browser, page, async () => {
    await to(0, 0);
    await page.mouse.down();
    for (let step = 1; step <= STEPS; step++) {
      const angle = (4 * Math.PI * step) / STEPS;
      await to(5 + 4 * Math.sin(angle), 4 * Math.sin(2 * angle));
      await page.waitForTimeout(12);
    }
  });
  const told = `${about.name}: dragging a guiding point`;
  tellSpans(`${told}, frame work, middle`, drag.frames, 0.5);
  tellSpans(`${told}, frame work, 99 of 100`, drag.frames, 0.99, 16);
  tellSpans(`${told}, frame work, longest`, drag.frames, 1);
  tellSpans(`${told}, longest task`, drag.tasks, 1, 100);
  const begun = performance.now();
  const drop = await watchMainThread(browser, page, async () => {
    await page.mouse.up();
    await page.locator('#announced', { hasText: /^Moved / }).waitFor({ state: 'attached' });
  });
  tell(`${told}, kept after`, (performance.now() - begun) / 1000, 's');
  tellSpans(`${told}, its end, longest task`, drop.tasks, 1, 100);
  await page.close();
}
