import { sameValue } from '../equal.ts';
import type { Pattern } from '../pattern.ts';
import { type Change, type Identified, LISTS, type ListChange, PARTS } from './change.ts';
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
  if (before.length === after.length && before.every(({ id }, index) => id === after[index]!.id)) {
    return updatesOf(before.map((from, index) => [from, after[index]!]));
  }
  const places = new Map(after.map(({ id }, index) => [id, index]));
  const inBoth = before.filter(({ id }) => places.has(id));
  const steady = longestRise(inBoth.map(({ id }) => places.get(id)!));
  const stays = new Set(steady.map((at) => inBoth[at]!.id));

  const updates = updatesOf(steady.map((at) => [inBoth[at]!, after[places.get(inBoth[at]!.id)!]!]));
  const placed = (list: readonly Item[]) =>
    list.map((record, index) => ({ index, record })).filter(({ record }) => !stays.has(record.id));
  const added = placed(after);
  const removed = placed(before);
  if (added.length + removed.length === 0) return updates;
  return { added, updated: updates?.updated ?? [], removed };
}

/** The change of records that stay where they are in the list, or null where none of them is another. */
function updatesOf<Item extends Identified>(
  pairs: readonly (readonly [Item, Item])[],
): ListChange<Item> | null {
  const updated = pairs.filter(([from, to]) => !sameValue(from, to));
  return updated.length === 0 ? null : { added: [], updated: updated.sort(byId), removed: [] };
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
