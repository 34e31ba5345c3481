import type { Browser, Page } from 'playwright-core';
import { watchMainThread } from './main-thread.ts';
import { tellSpans } from './report.ts';

/** No task may hold the page up for longer, milliseconds. */
export const DEAF = 100;

/** Milliseconds in which all that follows from a touch has come to rest. */
const REST = 3000;

/** Tells the longest task of a page while something is done, and until all that follows from it has come to rest. */
export type TellLongest = (doing: string, work: () => Promise<unknown>) => Promise<void>;

export const longestTasksOf =
  (browser: Browser, page: Page): TellLongest =>
  async (doing, work) => {
    const { tasks } = await watchMainThread(browser, page, async () => {
      await work();
      await page.waitForTimeout(REST);
    });
    tellSpans(`longest task, ${doing}`, tasks, 1, DEAF);
  };
