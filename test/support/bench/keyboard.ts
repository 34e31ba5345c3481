import type { Locator, Page } from 'playwright-core';
import { buttonNamed, choiceNamed, type Hands } from './hands.ts';

/** More stops than any screen has: beyond it the keyboard does not get there. */
const MOST_STOPS = 150;
/** Pixels that the sheet's cursor goes with one arrow key. */
const CURSOR_STEP = 20;

/** A person who has nothing but a keyboard: everything is reached by Tab, from wherever the focus is. */
export function keyboardHands(page: Page): Hands {
  async function reach(control: Locator): Promise<void> {
    await control.waitFor();
    for (let stop = 0; stop < MOST_STOPS; stop++) {
      if (await control.evaluate((one) => one.contains(document.activeElement))) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`Tab never comes to ${control}`);
  }
  async function press(key: string, times: number): Promise<void> {
    for (let time = 0; time < times; time++) await page.keyboard.press(key);
  }
  return {
    async press(name) {
      await reach(buttonNamed(page, name));
      await page.keyboard.press('Enter');
    },
    async choose(name) {
      const wanted = choiceNamed(page, name);
      await wanted.waitFor();
      const group = page.getByRole('radiogroup').filter({ has: wanted });
      await reach(group);
      // Where none is chosen yet, the one that Tab comes to is.
      await page.keyboard.press('Space');
      const many = await group.getByRole('radio').count();
      for (let step = 0; step < many && !(await wanted.isChecked()); step++)
        await page.keyboard.press('ArrowDown');
      if (!(await wanted.isChecked())) throw new Error(`The arrows never come to ${wanted}`);
    },
    async type(label, words) {
      await reach(page.getByRole('textbox', { name: label }).first());
      await page.keyboard.press('Control+a');
      await page.keyboard.type(words);
      await page.keyboard.press('Tab');
    },
    async touchSheet(right, down) {
      await reach(page.locator('canvas.sheet'));
      // The cursor begins in the middle once the whole sheet is shown.
      await page.keyboard.press('0');
      await press(right > 0 ? 'ArrowRight' : 'ArrowLeft', Math.abs(right) / CURSOR_STEP);
      await press(down > 0 ? 'ArrowDown' : 'ArrowUp', Math.abs(down) / CURSOR_STEP);
      await page.keyboard.press('Enter');
    },
  };
}
