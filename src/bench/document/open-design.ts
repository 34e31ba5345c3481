import { changeBetween } from '#pattern/change/between.ts';
import { applyChange, applyFitting, type Change, undoChange } from '#pattern/change/change.ts';
import type { Step } from '#pattern/change/step.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { Watched } from '../watched/watched.ts';

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
  readonly watched: Watched<DesignState>;
  readonly #journal: Journal;

  constructor(state: DesignState, journal: Journal) {
    this.watched = new Watched(state);
    this.#journal = journal;
  }

  readonly state = (): DesignState => this.watched.get();

  /** One step: a change made for the pattern as it is. A change of nothing is no step. */
  edit(change: Change, words: string): void {
    this.#step(change, words, applyChange);
  }

  /** One step to another pattern, such as a job gives back. */
  become(pattern: Pattern, words: string): void {
    this.#step(changeBetween(this.state().pattern, pattern), words, applyFitting);
  }

  #step(change: Change, words: string, apply: typeof applyChange): void {
    const state = this.state();
    if (!state.editable || Object.keys(change).length === 0) return;
    this.#set({
      ...state,
      pattern: apply(state.pattern, change),
      past: [...state.past, { change, words }],
      future: [],
    });
  }

  undo(): void {
    const state = this.state();
    const step = state.past.at(-1);
    if (!step || !state.editable) return;
    this.#set({
      ...state,
      pattern: applyChange(state.pattern, undoChange(step.change)),
      past: state.past.slice(0, -1),
      future: [step, ...state.future],
    });
  }

  redo(): void {
    const state = this.state();
    const [step] = state.future;
    if (!step || !state.editable) return;
    this.#set({
      ...state,
      pattern: applyChange(state.pattern, step.change),
      past: [...state.past, step],
      future: state.future.slice(1),
    });
  }

  /** Whether edits are taken here; not while another page holds the design. */
  setEditable(editable: boolean): void {
    const state = this.state();
    if (editable !== state.editable) this.watched.set({ ...state, editable });
  }

  #set(state: DesignState): void {
    this.#journal.record(state);
    this.watched.set(state);
  }
}
