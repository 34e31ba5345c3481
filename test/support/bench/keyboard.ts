import type { Locator, Page } from 'playwright-core';

/** More stops than any screen has: beyond it the keyboard does not get there. */
const MOST_STOPS = 150;

/** A person who has nothing but a keyboard: everything is reached by Tab, from wherever the focus is. */
export class Keyboard {
  readonly #page: Page;

  constructor(page: Page) {
    this.#page = page;
  }

  /** Goes to a control with Tab. Throws where Tab never comes to it. */
  async reach(control: Locator): Promise<void> {
    await control.waitFor();
    for (let stop = 0; stop < MOST_STOPS; stop++) {
      if (await control.evaluate((one) => one === document.activeElement)) return;
      await this.#page.keyboard.press('Tab');
    }
    throw new Error(`Tab never comes to ${control}`);
  }

  /** Presses a button, or follows a link. */
  async press(name: string | RegExp, role: 'button' | 'link' = 'button'): Promise<void> {
    await this.reach(
      this.#page.getByRole(role, { name, ...(typeof name === 'string' && { exact: true }) }).first(),
    );
    await this.#page.keyboard.press('Enter');
  }

  /** Chooses one of several: Tab to the group, arrows within it. */
  async choose(group: string, name: string | RegExp): Promise<void> {
    const radios = this.#page.getByRole('radiogroup', { name: group });
    const wanted = radios.getByRole('radio', { name });
    const chosen = radios.getByRole('radio', { checked: true });
    await this.reach((await chosen.count()) > 0 ? chosen : radios.getByRole('radio').first());
    for (let step = 0; step < MOST_STOPS && !(await wanted.isChecked()); step++)
      await this.#page.keyboard.press('ArrowDown');
    if (!(await wanted.isChecked())) throw new Error(`The arrows never come to ${wanted}`);
  }

  /** Types into a field in place of what it holds. */
  async type(label: string | RegExp, words: string): Promise<void> {
    await this.reach(this.#page.getByRole('textbox', { name: label }).first());
    await this.#page.keyboard.press('Control+a');
    await this.#page.keyboard.type(words);
    await this.#page.keyboard.press('Enter');
  }
}
