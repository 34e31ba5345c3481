import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { readContainer } from '#pattern/container/container.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** The open pattern as the bench saves it as a file. */
export async function savedPattern(page: Page): Promise<Pattern> {
  // A browser's own dialog cannot be answered from here.
  await page.evaluate(() => Object.assign(globalThis, { showSaveFilePicker: undefined }));
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  const read = readContainer(await readFile(await (await download).path()));
  if (!read.ok) throw new Error(`the saved file cannot be read: ${JSON.stringify(read.trouble)}`);
  return read.value.pattern;
}
