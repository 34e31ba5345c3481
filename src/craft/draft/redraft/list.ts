import { sameValue } from '#pattern/equal.ts';
import { mergedOrder } from './order.ts';
import type { Three } from './records.ts';

/** An edit that the new draft has no place for. */
export interface LostEdit {
  readonly list: 'pins' | 'runs' | 'marks' | 'areas';
  readonly id: string;
  readonly edit: 'changed' | 'added';
  /** The pins that it speaks of and that are gone; empty where only the record itself is no longer drafted. */
  readonly gone: readonly string[];
}

/** How one record that the hand changed or put in is brought to the new draft. */
interface Merging<Item> {
  readonly changed: (three: Three<Item>) => Item;
  readonly added: (mine: Item) => Item;
}

interface MergedList<Item> {
  readonly records: readonly Item[];
  readonly kept: number;
  readonly lost: readonly LostEdit[];
}

/** One list of records after both its drafting and a hand have changed it; `gone` tells which pins a record lacks. */
export function mergedList<Item extends { readonly id: string }>(
  list: LostEdit['list'],
  lists: Three<readonly Item[]>,
  gone: (record: Item) => readonly string[],
  merging: Merging<Item>,
): MergedList<Item> {
  const old = recordsById(lists.old);
  const mine = recordsById(lists.mine);
  const fresh = recordsById(lists.fresh);
  const lost: LostEdit[] = [];
  const edited = new Map<string, Item>();
  let kept = 0;
  for (const [id, record] of mine) {
    const was = old.get(id);
    if (was !== undefined && sameValue(was, record)) continue;
    const edit = was === undefined ? 'added' : 'changed';
    const becomes = fresh.get(id);
    if (was !== undefined && becomes === undefined) {
      lost.push({ list, id, edit, gone: gone(record) });
      continue;
    }
    const merged =
      was === undefined
        ? merging.added(record)
        : merging.changed({ old: was, mine: record, fresh: becomes! });
    const missing = gone(merged);
    if (missing.length > 0) lost.push({ list, id, edit, gone: missing });
    else {
      edited.set(id, merged);
      kept++;
    }
  }
  if (list !== 'pins') for (const id of old.keys()) if (!mine.has(id)) kept++;
  const order = mergedOrder([...old.keys()], [...mine.keys()], [...fresh.keys()]);
  return { records: order.flatMap((id) => edited.get(id) ?? fresh.get(id) ?? []), kept, lost };
}

const recordsById = <Item extends { readonly id: string }>(records: readonly Item[]) =>
  new Map(records.map((record) => [record.id, record]));
