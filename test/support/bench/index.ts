import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launchChromium } from './browser.ts';
import { startBench } from './serve.ts';

export { downloaded } from './downloads.ts';
export { fileAsked, giveFile, jsonFile, savedPattern } from './files.ts';
export { choose, everyTapCounts, goTo, openFile, showStages } from './pages.ts';

/** The bench in a browser, for one file of tests. */
export interface BenchInBrowser {
  /** A page of a browser that has never been here, at the shelf; closed when the file's tests are over. */
  visit(options?: BrowserContextOptions): Promise<Visit>;
  browser(): Browser;
  address(): string;
}

export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What the browser complained of: errors, policy violations, files not found. Nothing, where all is well. */
  readonly complaints: string[];
  /** Addresses asked for that are not the bench's own. */
  readonly strangers: string[];
}

/** Serves the built bench and starts a browser before the tests of a file, and ends both after them. */
export function useBench(): BenchInBrowser {
  let browser: Browser | undefined;
  let bench: Awaited<ReturnType<typeof startBench>> | undefined;
  beforeAll(async () => {
    bench = await startBench();
    browser = await launchChromium();
  });
  afterAll(async () => {
    await browser?.close();
    await bench?.close();
  });
  return {
    browser: () => browser!,
    address: () => bench!.address,
    async visit(options = {}) {
      const context = await browser!.newContext({ viewport: { width: 1280, height: 800 }, ...options });
      const page = await context.newPage();
      const complaints: string[] = [];
      const strangers: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
      });
      page.on('pageerror', (error) => complaints.push(error.message));
      page.on('request', (request) => {
        const url = request.url();
        if (!url.startsWith(bench!.address) && !/^(?:blob|data):/.test(url)) strangers.push(url);
      });
      await page.goto(bench!.address);
      return { page, context, complaints, strangers };
    },
  };
}
