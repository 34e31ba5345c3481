import type { Area, Mark, Pattern } from '../pattern.ts';
import type { Change, ListChange } from './change.ts';
import { freshIds } from './fresh-ids.ts';

/** What is drawn between and beside the pins, by the list that it stands in. */
export interface Drawn {
  readonly marks: Mark;
  readonly areas: Area;
}

export type DrawnList = keyof Drawn;

/** A record that has no id yet. */
export type Unnamed<Item> = Item extends unknown ? Omit<Item, 'id'> : never;

const LETTER = { marks: 'm', areas: 'a' } as const;

/** The change that adds records after all others of their list, and the ids that they get. */
export function addDrawn<List extends DrawnList>(
  pattern: Pattern,
  list: List,
  records: readonly Unnamed<Drawn[List]>[],
): { readonly change: Change; readonly ids: readonly string[] } {
  const ids = freshIds(pattern[list], LETTER[list], records.length);
  if (records.length === 0) return { change: {}, ids };
  const added = records.map((record, at) => ({
    index: pattern[list].length + at,
    record: { id: ids[at]!, ...record } as unknown as Drawn[List],
  }));
  return { change: changeOf(list, { added, updated: [], removed: [] }), ids };
}

/** The change that gives a mark or an area another record under its id. Throws where there is none of that id. */
export function updateDrawn<List extends DrawnList>(
  pattern: Pattern,
  list: List,
  record: Drawn[List],
): Change {
  const from = pattern[list][placeOf(pattern, list, record.id)] as Drawn[List];
  return changeOf(list, { added: [], updated: [[from, record]], removed: [] });
}

/** The change by which a mark or an area goes. Throws where there is none of that id. */
export function removeDrawn<List extends DrawnList>(pattern: Pattern, list: List, id: string): Change {
  const index = placeOf(pattern, list, id);
  const record = pattern[list][index] as Drawn[List];
  return changeOf(list, { added: [], updated: [], removed: [{ index, record }] });
}

function placeOf(pattern: Pattern, list: DrawnList, id: string): number {
  const index = (pattern[list] as readonly (Mark | Area)[]).findIndex((record) => record.id === id);
  if (index < 0) throw new RangeError(`no "${id}" among the ${list}`);
  return index;
}

const changeOf = <List extends DrawnList>(list: List, edit: ListChange<Drawn[List]>): Change =>
  ({ [list]: edit }) as unknown as Change;
