import type { Locator, Page } from 'playwright-core';

/** A way of working the bench: everything a person does to it, with one means only. */
export interface Hands {
  /** Presses a button. */
  press(name: string | RegExp): Promise<void>;
  /** Chooses one of several. */
  choose(name: string | RegExp): Promise<void>;
  /** Types into a field in place of what it holds. */
  type(label: string | RegExp, words: string): Promise<void>;
  /** Touches the sheet, so many pixels right of its middle and below it (multiples of 20). */
  touchSheet(right: number, down: number): Promise<void>;
}

export const buttonNamed = (page: Page, name: string | RegExp): Locator =>
  page.getByRole('button', { name, ...(typeof name === 'string' && { exact: true }) }).first();

export const choiceNamed = (page: Page, name: string | RegExp): Locator =>
  page.getByRole('radio', { name }).first();
