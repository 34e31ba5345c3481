import type { DesignState, Journal } from '../document/open-design.ts';
import type { Database, DesignCard } from './database.ts';

/**
 * Writes every step of an open design to the store as it is made, one after the other, each in one transaction: after
 * a crash the design opens as it was after its last whole step.
 */
export class DesignJournal implements Journal {
  readonly #database: Database;
  #card: DesignCard;
  #written: DesignState;
  #wanted: DesignState;
  #busy: Promise<void> | null = null;

  constructor(database: Database, card: DesignCard, state: DesignState) {
    this.#database = database;
    this.#card = card;
    this.#written = state;
    this.#wanted = state;
  }

  record(state: DesignState): void {
    this.#wanted = state;
    this.#busy ??= this.#writeAll().finally(() => {
      this.#busy = null;
    });
  }

  /** Resolves when everything made so far is in the store. */
  async settled(): Promise<void> {
    while (this.#busy) await this.#busy;
  }

  async #writeAll(): Promise<void> {
    while (this.#written !== this.#wanted) {
      const state = this.#wanted;
      await this.#write(state);
      this.#written = state;
    }
  }

  async #write({ pattern, past, future }: DesignState): Promise<void> {
    const steps = [...past, ...future];
    const before = [...this.#written.past, ...this.#written.future];
    const same = steps.findIndex((step, index) => step !== before[index]);
    const first = same < 0 ? Math.min(steps.length, before.length) : same;
    const write = this.#database.transaction(['cards', 'steps'], 'readwrite');
    const table = write.objectStore('steps');
    const { id } = this.#card;
    if (before.length > first) await table.delete(IDBKeyRange.bound([id, first], [id, []]));
    for (const [index, step] of steps.entries()) if (index >= first) await table.put(step, [id, index]);
    this.#card = {
      ...this.#card,
      changed: Date.now(),
      revision: this.#card.revision + 1,
      done: past.length,
      pins: pattern.pins.length,
    };
    await write.objectStore('cards').put(this.#card);
    await write.done;
  }
}
