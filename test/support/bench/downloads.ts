import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';

/** Does something that saves a file, and gives the file's name and bytes. No dialog is opened: nobody is there to answer. */
export async function downloaded(
  page: Page,
  act: () => Promise<void>,
): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  await page.evaluate(() => Object.assign(globalThis, { showSaveFilePicker: undefined }));
  const coming = page.waitForEvent('download');
  await act();
  const download = await coming;
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}
