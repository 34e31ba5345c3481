import type { Step } from '#pattern/change/step.ts';
import { sameValue } from '#pattern/equal.ts';
import type { DesignState, Journal } from '../document/open-design.ts';
import { nextTask } from '../parts/next-task.ts';
import { abandon, type Database, type DesignCard, type Writing } from './database.ts';
import { createDesign, readPictures, TABLES } from './designs.ts';
import { putPattern } from './pieces.ts';
import { sameChange } from './same-change.ts';
import { keepVersion } from './versions.ts';

/** Whether everything done so far is in the store. */
export type Saved =
  | { readonly at: 'saved' }
  | { readonly at: 'saving' }
  /** Nothing could be written; it is tried again with the next step. */
  | { readonly at: 'failed'; readonly why: 'full' | 'closed' | 'other' }
  /** Another page wrote to the design meanwhile; what is here was put on the shelf as a copy. */
  | { readonly at: 'copied'; readonly name: string };

/** Steps that can be undone; older ones are forgotten, a hundred at a time. */
const MOST_STEPS = 500;

/** After so many steps the pattern itself is put away anew, so that opening it never replays many. */
const STEPS_BETWEEN = 40;

/**
 * Writes every step of an open design to the store as it is made, one after the other, each in one transaction that is
 * read back: after a crash the design opens as it was after its last whole step.
 */
export class DesignJournal implements Journal {
  readonly #database: Database;
  readonly #onSaved: (saved: Saved) => void;
  /** Number of the first step that this page knows. */
  readonly #origin: number;
  /** The design's revision when this page opened it. */
  readonly #opened: number;
  #card: DesignCard;
  #written: DesignState;
  #wanted: DesignState;
  #busy: Promise<void> | null = null;

  constructor(database: Database, card: DesignCard, state: DesignState, onSaved: (saved: Saved) => void) {
    this.#database = database;
    this.#origin = card.first;
    this.#opened = card.revision;
    this.#card = card;
    this.#written = state;
    this.#wanted = state;
    this.#onSaved = onSaved;
  }

  record(state: DesignState): void {
    this.#wanted = state;
    this.#onSaved({ at: 'saving' });
    this.#busy ??= this.#writeAll().finally(() => {
      this.#busy = null;
    });
  }

  /** Resolves when everything made so far is in the store, or could not be written. */
  async settled(): Promise<void> {
    while (this.#busy) await this.#busy;
  }

  async #writeAll(): Promise<void> {
    while (this.#written !== this.#wanted) {
      const state = this.#wanted;
      try {
        if (await this.#write(state)) this.#written = state;
        else return await this.#putAside(state);
      } catch (error) {
        return this.#onSaved({ at: 'failed', why: whyOf(error) });
      }
    }
    this.#onSaved({ at: 'saved' });
  }

  /** False where the design in the store is not the one that was opened here. */
  async #write(state: DesignState): Promise<boolean> {
    const write = this.#database.transaction(TABLES, 'readwrite');
    try {
      return await this.#writeIn(write, state);
    } catch (error) {
      await abandon(write);
      throw error;
    }
  }

  async #writeIn(write: Writing, state: DesignState): Promise<boolean> {
    const before = this.#card;
    const { id } = before;
    const after = stepsOf(state);
    const old = stepsOf(this.#written);
    const parted = partingOf(old, after);
    // Another page of this browser may have written meanwhile.
    const stored = await write.objectStore('cards').get(id);
    if (stored?.revision !== before.revision) {
      await abandon(write);
      return false;
    }
    const steps = write.objectStore('steps');
    const number = (index: number) => this.#origin + index;
    if (old.length > parted) await steps.delete(IDBKeyRange.bound([id, number(parted)], [id, []]));
    for (let index = parted; index < after.length; index++)
      await steps.put(after[index]!, [id, number(index)]);

    const done = number(state.past.length);
    const first = Math.max(before.first, after.length > MOST_STEPS ? done - MOST_STEPS + 100 : before.first);
    if (first > before.first)
      await steps.delete(IDBKeyRange.bound([id, before.first], [id, first], false, true));
    // The kept pattern holds steps that are now others, or lies too far behind.
    const stale =
      number(parted) < before.at || Math.abs(done - before.at) >= STEPS_BETWEEN || first > before.at;
    if (stale) await putPattern(write, { table: 'pieces', key: [id] }, state.pattern);
    if (stale || before.revision === this.#opened)
      await keepVersion(write, id, this.#written.pattern, Date.now());
    const card: DesignCard = {
      ...stored,
      ...{ changed: Date.now(), revision: before.revision + 1, pins: state.pattern.pins.length },
      ...{ first, done, at: stale ? done : before.at },
    };
    await write.objectStore('cards').put(card);
    await write.done;
    await this.#readBack(card, state);
    this.#card = card;
    return true;
  }

  async #readBack(card: DesignCard, { past }: DesignState): Promise<void> {
    const kept = await this.#database.get('cards', card.id);
    const last = past.length > 0 ? await this.#database.get('steps', [card.id, card.done - 1]) : undefined;
    // To get a long step out of the store is work enough for one task.
    await nextTask();
    const isSame = await sameChange(last?.change, past.at(-1)?.change);
    if (!isSame || !sameValue(writtenHere(kept), writtenHere(card))) {
      throw new Error('What was written could not be read back.');
    }
  }

  async #putAside({ pattern }: DesignState): Promise<void> {
    const name = `${this.#card.name} (copy)`;
    const pictures = await readPictures(this.#database, this.#card.id);
    await createDesign(this.#database, { pattern, pictures }, name);
    this.#onSaved({ at: 'copied', name });
  }
}

/** Of a card what the journal writes: the name and the cover may be changed from the shelf at any moment. */
const writtenHere = (card: DesignCard | undefined) =>
  card && { ...card, name: null, cover: null, removed: null };

const stepsOf = ({ past, future }: DesignState): Step[] => [...past, ...future];

function partingOf(old: readonly Step[], after: readonly Step[]): number {
  const index = after.findIndex((step, place) => step !== old[place]);
  return index < 0 ? Math.min(old.length, after.length) : index;
}

function whyOf(error: unknown): 'full' | 'closed' | 'other' {
  if (!(error instanceof DOMException)) return 'other';
  if (error.name === 'QuotaExceededError') return 'full';
  return error.name === 'InvalidStateError' ? 'closed' : 'other';
}
