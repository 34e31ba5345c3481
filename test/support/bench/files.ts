import type { FileChooser, Page } from 'playwright-core';
import { readContainer } from '#pattern/container/container.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { downloaded } from './downloads.ts';

/** A file with its name, its kind and what is in it. */
export interface NamedFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** A file that a person gives: one on the disk by its path, or one made for the test. */
export type GivenFile = string | NamedFile;

/** A file of JSON with a value in it, or with a text that may be none. */
export const jsonFile = (name: string, content: unknown): NamedFile => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(typeof content === 'string' ? content : JSON.stringify(content)),
});

/** Does something that asks for a file, and gives back where it is chosen. */
export async function fileAsked(page: Page, act: () => Promise<void>): Promise<FileChooser> {
  const asked = page.waitForEvent('filechooser');
  await act();
  return asked;
}

/** Presses a button that asks for a file, and chooses one. */
export async function giveFile(page: Page, button: string, file: GivenFile): Promise<void> {
  const asked = await fileAsked(page, () => pressed(page, button));
  await asked.setFiles(file);
}

/** The open pattern as the bench saves it as a file. */
export async function savedPattern(page: Page): Promise<Pattern> {
  const { bytes } = await downloaded(page, () => pressed(page, 'Save as a file'));
  const read = readContainer(bytes);
  if (!read.ok) throw new Error(`the saved file cannot be read: ${JSON.stringify(read.trouble)}`);
  return read.value.pattern;
}

/** By key: two taps on one button within a moment would count once. */
const pressed = (page: Page, button: string): Promise<void> =>
  page.getByRole('button', { name: button }).press('Enter');
