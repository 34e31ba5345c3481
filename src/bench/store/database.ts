import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Pattern } from '#pattern/pattern.ts';
import type { Step } from '../document/step.ts';

/** What the shelf shows of a design. */
export interface DesignCard {
  readonly id: string;
  readonly name: string;
  readonly created: number;
  readonly changed: number;
  /** Goes up with every save. */
  readonly revision: number;
  /** How many of its steps are done; those after it were undone. */
  readonly done: number;
  readonly pins: number;
}

interface Tables extends DBSchema {
  readonly cards: { key: string; value: DesignCard };
  /** The pattern as it was before the step whose number `from` gives. */
  readonly patterns: { key: string; value: { readonly from: number; readonly pattern: Pattern } };
  readonly steps: { key: [design: string, number: number]; value: Step };
  readonly pictures: { key: [design: string, entry: string]; value: Blob };
  readonly settings: { key: string; value: unknown };
}

export type Database = IDBPDatabase<Tables>;

/** Opens the store of this browser. Rejects where the browser keeps nothing. */
export const openDatabase = (): Promise<Database> =>
  openDB<Tables>('pinlight', 1, {
    upgrade(database) {
      database.createObjectStore('cards', { keyPath: 'id' });
      database.createObjectStore('patterns');
      database.createObjectStore('steps');
      database.createObjectStore('pictures');
      database.createObjectStore('settings');
    },
    // A newer page in another tab may then bring the store up to date.
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  });

export const allOf = (design: string): IDBKeyRange => IDBKeyRange.bound([design], [design, []]);
