import { launchChromium } from '../../test/support/bench/browser.ts';
import { goTo, openFile } from '../../test/support/bench/pages.ts';
import { watchMainThread } from './tools/main-thread.ts';
import { largePattern, withFile } from './tools/patterns.ts';
import { tellSpans } from './tools/report.ts';
import { measureServed } from './tools/served.ts';

/** For how long the page is deaf while heavy work goes on beside it, in a real browser. */
await measureServed(measureTasks);

async function measureTasks(address: string): Promise<void> {
  const browser = await launchChromium();
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(address);
  await withFile(largePattern(20_000), (file) => openFile(page, file));
  await page.waitForTimeout(2000);
  const looking = await watchMainThread(browser, page, async () => {
    await goTo(page, 'Look over');
    await page.locator('.panel .places, .panel .message').first().waitFor({ timeout: 120_000 });
    await page.waitForTimeout(1000);
  });
  tellSpans('20000 pins: longest task, looking over', looking.tasks, 1, 100);
  await browser.close();
}
