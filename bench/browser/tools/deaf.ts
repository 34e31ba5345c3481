import type { Browser, Page } from 'playwright-core';
import { watchMainThread } from './main-thread.ts';
import { tellSpans } from './report.ts';

/** No task may hold the page up for longer, milliseconds. */
export const DEAF = 100;

/** Tells the longest task of a page while `work` goes on and until it has been quiet for a while. */
export async function tellLongestTask(
  browser: Browser,
  page: Page,
  doing: string,
  work: () => Promise<unknown>,
  quiet = 1500,
): Promise<void> {
  const { tasks } = await watchMainThread(browser, page, async () => {
    await work();
    await page.waitForTimeout(quiet);
  });
  tellSpans(`longest task, ${doing}`, tasks, 1, DEAF);
}
