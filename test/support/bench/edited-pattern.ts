export type Edit = 'add' | 'undo' | 'redo' | 'remove';

interface State {
  readonly pins: readonly string[];
  readonly past: readonly (readonly string[])[];
  readonly future: readonly (readonly string[])[];
  readonly last: Edit | null;
}

/** What a pattern must be after each edit, by a model of our own; a pin is the text of its place. */
export class EditedPattern {
  #states: State[];
  #times: number[] = [];
  #tried: Edit | null = null;
  #saved = 0;

  constructor(pins: readonly string[]) {
    this.#states = [{ pins, past: [], future: [], last: null }];
  }

  get edits(): number {
    return this.#states.length - 1;
  }

  /** Up to which edit the page has shown that all is saved. */
  get shownSaved(): number {
    return this.#saved;
  }

  get #now(): State {
    return this.#states.at(-1)!;
  }

  /** An edit that can be made now, by a number from 0 to 1. */
  choose(random: number): Edit {
    const { past, future, last } = this.#now;
    if (random < 0.2 && past.length > 0) return 'undo';
    if (random < 0.3 && future.length > 0) return 'redo';
    return random < 0.45 && last === 'add' ? 'remove' : 'add';
  }

  attempt(edit: Edit): void {
    this.#tried = edit;
  }

  countAfter(edit: Edit): number {
    return after(this.#now, edit, '').pins.length;
  }

  /** The edit that was tried has shown on the page; `chosen` is the place of a pin that was added. */
  made(chosen: string, time: number): void {
    this.#states.push(after(this.#now, this.#tried!, chosen));
    this.#times.push(time);
    this.#tried = null;
  }

  saved(): void {
    this.#saved = this.edits;
  }

  /** The last edit that was made by then. */
  lastBefore(time: number): number {
    return this.#times.filter((made) => made <= time).length;
  }

  /**
   * After which edit the pattern is as it was found, or null where it never was so. The edit that was under way when
   * the browser ended may be in it: it then counts as one more.
   */
  resumeAt(found: readonly string[]): number | null {
    const states = [...this.#states];
    if (this.#tried) states.push(after(this.#now, this.#tried, found.at(-1) ?? ''));
    for (let index = states.length - 1; index >= 0; index--) {
      if (!same(states[index]!.pins, found)) continue;
      this.#resumed = { ...states[index]!, last: null };
      return index;
    }
    return null;
  }

  #resumed: State | null = null;

  /** Goes on from where it was resumed. */
  begin(): void {
    this.#states = [this.#resumed ?? this.#now];
    [this.#times, this.#tried, this.#saved] = [[], null, 0];
  }
}

function after({ pins, past, future }: State, edit: Edit, added: string): State {
  switch (edit) {
    case 'add':
      return { pins: [...pins, added], past: [...past, pins], future: [], last: edit };
    case 'remove':
      return { pins: pins.slice(0, -1), past: [...past, pins], future: [], last: edit };
    case 'undo':
      return { pins: past.at(-1)!, past: past.slice(0, -1), future: [pins, ...future], last: edit };
    case 'redo':
      return { pins: future[0]!, past: [...past, pins], future: future.slice(1), last: edit };
  }
}

const same = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((pin, index) => pin === other[index]);
