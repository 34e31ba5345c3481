import { sameValue } from '../equal.ts';
import type { Pattern } from '../pattern.ts';
import { type Change, type Identified, LISTS, type ListChange, PARTS, type Placed } from './change.ts';
import { byId } from './join.ts';

/** The change that makes `after` of `before`: records are the same where their ids are, and as few as can be move. */
export function changeBetween(before: Pattern, after: Pattern): Change {
  const result: Record<string, unknown> = {};
  for (const list of LISTS) {
    const edit = listChangeBetween<Identified>(before[list], after[list]);
    if (edit) result[list] = edit;
  }
  for (const part of PARTS) {
    const [from, to] = [before[part] ?? null, after[part] ?? null];
    if (!sameValue(from, to)) result[part] = [from, to];
  }
  return result as Change;
}

function listChangeBetween<Item extends Identified>(
  before: readonly Item[],
  after: readonly Item[],
): ListChange<Item> | null {
  if (before === after) return null;
  const change = whereNoneMoved(before, after) ?? whereSomeMoved(before, after);
  const { added, updated, removed } = change;
  return added.length + updated.length + removed.length === 0
    ? null
    : { added, updated: [...updated].sort(byId), removed };
}

/** The change where what both lists have follows each other alike, in one pass; null where it does not. */
function whereNoneMoved<Item extends Identified>(
  before: readonly Item[],
  after: readonly Item[],
): ListChange<Item> | null {
  const isBefore = holderOfIds(before);
  const isAfter = holderOfIds(after);
  const added: Placed<Item>[] = [];
  const updated: (readonly [Item, Item])[] = [];
  const removed: Placed<Item>[] = [];
  let [at, to] = [0, 0];
  while (at < before.length || to < after.length) {
    const [old, now] = [before[at], after[to]];
    if (old && now && old.id === now.id) {
      if (!sameValue(old, now)) updated.push([old, now]);
      at++;
      to++;
    } else if (old && !isAfter(old)) removed.push({ index: at++, record: old });
    else if (now && !isBefore(now)) added.push({ index: to++, record: now });
    else return null;
  }
  return { added, updated, removed };
}

/** Tells whether a list has a record of that id. The ids are gathered when it is first asked. */
function holderOfIds(list: readonly Identified[]): (record: Identified) => boolean {
  let ids: ReadonlySet<string> | null = null;
  return ({ id }) => {
    ids ??= new Set(list.map((record) => record.id));
    return ids.has(id);
  };
}

/** The change where records moved in the order: those that move go and come, and as few as can be move. */
function whereSomeMoved<Item extends Identified>(
  before: readonly Item[],
  after: readonly Item[],
): ListChange<Item> {
  const places = new Map(after.map(({ id }, index) => [id, index]));
  const inBoth = before.filter(({ id }) => places.has(id));
  const steady = longestRise(inBoth.map(({ id }) => places.get(id)!));
  const stays = new Set(steady.map((at) => inBoth[at]!.id));

  const updated: (readonly [Item, Item])[] = [];
  for (const at of steady) {
    const from = inBoth[at]!;
    const to = after[places.get(from.id)!]!;
    if (!sameValue(from, to)) updated.push([from, to]);
  }
  const placed = (list: readonly Item[]) =>
    list.map((record, index) => ({ index, record })).filter(({ record }) => !stays.has(record.id));
  return { added: placed(after), updated, removed: placed(before) };
}

/** Places of a longest strictly rising subsequence (Fredman, Discrete Mathematics 11 (1975)), n log n. */
function longestRise(values: readonly number[]): number[] {
  // ends[k]: place of the smallest value that ends a rise of k + 1 values.
  const ends: number[] = [];
  const previous = new Array<number>(values.length).fill(-1);
  for (const [at, value] of values.entries()) {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (values[ends[middle]!]! < value) low = middle + 1;
      else high = middle;
    }
    if (low > 0) previous[at] = ends[low - 1]!;
    ends[low] = at;
  }
  const rise: number[] = [];
  for (let at = ends.at(-1) ?? -1; at >= 0; at = previous[at]!) rise.push(at);
  return rise.reverse();
}
