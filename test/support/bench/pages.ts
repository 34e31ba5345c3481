import type { Page } from 'playwright-core';
import { type GivenFile, giveFile } from './files.ts';

/** Opens a file from the shelf, as a person chooses it, and waits for the sheet. */
export async function openFile(page: Page, file: GivenFile): Promise<void> {
  await giveFile(page, 'Open a file', file);
  await page.locator('canvas.sheet').waitFor();
}

/** Begins a pattern from a picture, as a person chooses it, and waits for the stage. */
export async function beginFromPaper(page: Page, file: GivenFile): Promise<void> {
  await giveFile(page, 'From paper', file);
  await page.getByRole('heading', { level: 2, name: 'Paper' }).waitFor();
}

/** Opens the list of the stages where it is behind a button, as on a phone. */
export async function showStages(page: Page): Promise<void> {
  const list = page.getByRole('navigation', { name: 'Stages of the work' });
  await list.waitFor();
  const button = list.getByRole('button', { expanded: false });
  if (await button.isVisible()) await button.press('Enter');
}

/** Goes to a stage of the open design. */
export async function goTo(page: Page, stage: string): Promise<void> {
  await showStages(page);
  await page.getByRole('link', { name: stage, exact: true }).click();
  await page.getByRole('heading', { level: 2, name: stage }).waitFor();
}

/** Chooses one of a few by how its words begin. */
export const choose = (page: Page, words: string): Promise<void> =>
  page.locator('.choice-one', { hasText: new RegExp(`^${words}`) }).click();

/** Turns off in the settings that a tap soon after another counts for nothing, and goes back to the shelf. */
export async function everyTapCounts(page: Page): Promise<void> {
  await page.evaluate(() => localStorage.setItem('pinlight-preferences', '{"repeats":"each"}'));
  await page.reload();
}
