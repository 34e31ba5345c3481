import { changeBetween } from '#pattern/change/between.ts';
import { applyChange, type Change, undoChange } from '#pattern/change/change.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Step } from './step.ts';

/** What the sheet and the stages see of an open design at one moment. A new value after every step. */
export interface DesignState {
  readonly pattern: Pattern;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** Whether it may be edited; not where another tab holds it. */
  readonly editable: boolean;
}

/** Where the steps of a design go as they are made. */
export interface Journal {
  /** After a step was made, undone or made again. `past` is all that led to `pattern`. */
  record(state: DesignState): void;
}

/**
 * The design that is open: its pattern, everything that was done to it, and what was undone. All edits go through
 * `edit` or `become`, so that each can be undone and none is lost.
 */
export class OpenDesign {
  #state: DesignState;
  readonly #journal: Journal;
  readonly #listeners = new Set<() => void>();

  constructor(state: DesignState, journal: Journal) {
    this.#state = state;
    this.#journal = journal;
  }

  readonly state = (): DesignState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** One step: a change made for the pattern as it is. A change of nothing is no step. */
  edit(change: Change, words: string): void {
    if (!this.#state.editable || Object.keys(change).length === 0) return;
    this.#set({
      ...this.#state,
      pattern: applyChange(this.#state.pattern, change),
      past: [...this.#state.past, { change, words }],
      future: [],
    });
  }

  /** One step to another pattern, such as a job gives back. */
  become(pattern: Pattern, words: string): void {
    this.edit(changeBetween(this.#state.pattern, pattern), words);
  }

  undo(): void {
    const step = this.#state.past.at(-1);
    if (!step || !this.#state.editable) return;
    this.#set({
      ...this.#state,
      pattern: applyChange(this.#state.pattern, undoChange(step.change)),
      past: this.#state.past.slice(0, -1),
      future: [step, ...this.#state.future],
    });
  }

  redo(): void {
    const step = this.#state.future[0];
    if (!step || !this.#state.editable) return;
    this.#set({
      ...this.#state,
      pattern: applyChange(this.#state.pattern, step.change),
      past: [...this.#state.past, step],
      future: this.#state.future.slice(1),
    });
  }

  /** Whether edits are taken here; not while another page holds the design. */
  setEditable(editable: boolean): void {
    if (editable === this.#state.editable) return;
    this.#state = { ...this.#state, editable };
    for (const listener of this.#listeners) listener();
  }

  #set(state: DesignState): void {
    this.#state = state;
    this.#journal.record(state);
    for (const listener of this.#listeners) listener();
  }
}
