import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { Step } from '#pattern/change/step.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { KeptFile } from './kept-file.ts';

/** What the shelf shows of a design. */
export interface DesignCard {
  readonly id: string;
  readonly name: string;
  readonly created: number;
  readonly changed: number;
  /** Goes up with every save. */
  readonly revision: number;
  /** Steps are numbered from 0 for good. Those before `first` are forgotten; `done` of all of them are in the pattern. */
  readonly first: number;
  readonly done: number;
  /** After which step the kept pattern was taken; it is brought to `done` by the steps between. */
  readonly at: number;
  readonly pins: number;
  /** May be of an earlier revision. */
  readonly cover?: Cover;
  /** When it was taken off the shelf, where it was. */
  readonly removed?: number;
}

/** What the shelf shows and finds of a design beside its name, as it was at a revision. */
export interface Cover {
  readonly revision: number;
  /** A small picture of the pattern. */
  readonly picture: KeptFile;
  readonly maker?: string;
  readonly lace?: string;
}

/** One earlier state of a design. */
export interface VersionCard {
  readonly design: string;
  readonly number: number;
  readonly saved: number;
  readonly pins: number;
}

/** A part of a pattern: everything but its lists, or a stretch of one of them. Large patterns are put away in pieces. */
export type Piece =
  | Omit<Pattern, 'pins' | 'runs' | 'marks' | 'areas'>
  | Pattern['pins']
  | Pattern['runs']
  | Pattern['marks']
  | Pattern['areas'];

interface Tables extends DBSchema {
  readonly cards: { key: string; value: DesignCard };
  readonly pieces: { key: [design: string, list: string, number: number]; value: Piece };
  readonly steps: { key: [design: string, number: number]; value: Step };
  readonly pictures: { key: [design: string, entry: string]; value: KeptFile };
  readonly versions: { key: [design: string, number: number]; value: VersionCard };
  readonly versionPieces: {
    key: [design: string, version: number, list: string, number: number];
    value: Piece;
  };
  readonly settings: { key: string; value: unknown };
}

export type TableName = 'cards' | 'pieces' | 'steps' | 'pictures' | 'versions' | 'versionPieces' | 'settings';
export type Database = IDBPDatabase<Tables>;
export type Writing = IDBPTransaction<Tables, TableName[], 'readwrite'>;
export type Reading = IDBPTransaction<Tables, TableName[], 'readonly' | 'readwrite'>;

const VERSION = 1;

/** Why there is no store: this page is older than what wrote it, or the browser keeps nothing. */
export type StoreTrouble = 'newer-store' | 'no-store';

/** Opens the store of this browser, or says why it cannot be. `onLeave` is called where a newer page needs it closed. */
export async function openDatabase(onLeave: () => void): Promise<Database | StoreTrouble> {
  try {
    return await openTables(onLeave);
  } catch (error) {
    return error instanceof DOMException && error.name === 'VersionError' ? 'newer-store' : 'no-store';
  }
}

/** A store in this page's memory, for browsers that keep nothing: the bench works, and says that nothing is saved. */
export async function openMemory(): Promise<Database> {
  await import('fake-indexeddb/auto');
  return openTables(() => {});
}

const openTables = (onLeave: () => void): Promise<Database> =>
  openDB<Tables>('pinlight', VERSION, {
    upgrade(database) {
      database.createObjectStore('cards', { keyPath: 'id' });
      for (const table of ['pieces', 'steps', 'pictures', 'versions', 'versionPieces', 'settings'] as const) {
        database.createObjectStore(table);
      }
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
      onLeave();
    },
    terminated: onLeave,
  });

/** Ends a transaction that went wrong so that nothing of it stays: what was asked for by then would be kept otherwise. */
export async function abandon(write: Writing): Promise<void> {
  try {
    write.abort();
  } catch {
    // It has ended by itself.
  }
  await write.done.catch(() => {});
}

/** Every key that begins so. */
export const under = (...start: readonly (string | number)[]): IDBKeyRange =>
  IDBKeyRange.bound([...start], [...start, []]);
