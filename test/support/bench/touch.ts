import type { Page } from 'playwright-core';
import { buttonNamed, type Hands } from './hands.ts';

/** A person with fingers on a screen: taps, and nothing else. Words are typed on the keys that the screen shows. */
export const touchHands = (page: Page): Hands => ({
  press: (name) => buttonNamed(page, name).tap(),
  choose: (name) => page.getByRole('radiogroup').locator('label', { hasText: name }).first().tap(),
  async type(label, words) {
    const field = page.getByRole('textbox', { name: label }).first();
    await field.tap();
    await field.selectText();
    await page.keyboard.insertText(words);
    // As the screen's keys do when the field is left.
    await field.blur();
  },
  async touchSheet(right, down) {
    const { x, y, width, height } = (await page.locator('canvas.sheet').boundingBox())!;
    await page.touchscreen.tap(x + width / 2 + right, y + height / 2 + down);
  },
});
