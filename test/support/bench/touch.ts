import type { Page } from 'playwright-core';
import { buttonNamed, type Hands } from './hands.ts';

/** Two taps in one place sooner than this count once, ms: nobody looks and taps again so fast. */
const A_MOMENT = 350;

/** A person with fingers on a screen: taps, and nothing else. Words are typed on the keys that the screen shows. */
export const touchHands = (page: Page): Hands => ({
  async press(name) {
    await page.waitForTimeout(A_MOMENT);
    await buttonNamed(page, name).tap();
  },
  async choose(name) {
    await page.waitForTimeout(A_MOMENT);
    await page.getByRole('radiogroup').locator('label', { hasText: name }).first().tap();
  },
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
