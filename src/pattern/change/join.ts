import { sameValue } from '../equal.ts';
import { type Change, type Identified, LISTS, type ListChange, PARTS, type Placed } from './change.ts';

/** One change that does what `first` and then `second` do. Joining is associative. */
export function joinChanges(first: Change, second: Change): Change {
  const result: Record<string, unknown> = { ...first, ...second };
  for (const list of LISTS) {
    const [a, b] = [first[list], second[list]];
    if (!a || !b) continue;
    const joined = joinLists<Identified>(a, b);
    if (joined) result[list] = joined;
    else delete result[list];
  }
  for (const part of PARTS) {
    const [a, b] = [first[part], second[part]];
    if (!a || !b) continue;
    if (sameValue(a[0], b[1])) delete result[part];
    else result[part] = [a[0], b[1]];
  }
  return result as Change;
}

/** The order in which updates stand in a change: of their ids, by code unit. */
export const byId = (
  [a]: readonly [Identified, Identified],
  [b]: readonly [Identified, Identified],
): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

function joinLists<Item extends Identified>(
  a: ListChange<Item>,
  b: ListChange<Item>,
): ListChange<Item> | null {
  const [goneA, comeA, goneB, comeB] = [a.removed, a.added, b.removed, b.added].map(indices) as [
    number[],
    number[],
    number[],
    number[],
  ];
  const [comesInA, goesInB] = [new Set(comeA), new Set(goneB)];
  const updatesA = new Map(a.updated.map((update) => [update[0].id, update]));
  const updatesB = new Map(b.updated.map((update) => [update[0].id, update]));

  const removed: Placed<Item>[] = [...a.removed];
  const gone = new Set<string>();
  for (const { index, record } of b.removed) {
    if (comesInA.has(index)) continue;
    gone.add(record.id);
    removed.push({ index: shifted(index, comeA, goneA), record: updatesA.get(record.id)?.[0] ?? record });
  }

  const added: Placed<Item>[] = [...b.added];
  const come = new Set<string>();
  for (const { index, record } of a.added) {
    come.add(record.id);
    if (goesInB.has(index)) continue;
    added.push({ index: shifted(index, goneB, comeB), record: updatesB.get(record.id)?.[1] ?? record });
  }

  const updated: (readonly [Item, Item])[] = [];
  for (const [id, [from, to]] of updatesA) {
    const last = updatesB.get(id)?.[1] ?? to;
    if (!gone.has(id) && !sameValue(from, last)) updated.push([from, last]);
  }
  for (const [id, update] of updatesB) if (!updatesA.has(id) && !come.has(id)) updated.push(update);

  if (added.length + updated.length + removed.length === 0) return null;
  return { added: added.sort(byIndex), updated: updated.sort(byId), removed: removed.sort(byIndex) };
}

/**
 * Where a record that stays ends up, when the records at `out` (indices before) go and others come in at `into`
 * (indices after); both in rising order.
 */
function shifted(index: number, out: readonly number[], into: readonly number[]): number {
  const rank = index - countWhile(out, (gone) => gone < index);
  return rank + countWhile(into, (come, before) => come - before <= rank);
}

/** How many items at the front of a list hold to a condition that, once broken, stays broken. */
function countWhile(list: readonly number[], holds: (item: number, at: number) => boolean): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (holds(list[middle]!, middle)) low = middle + 1;
    else high = middle;
  }
  return low;
}

const indices = (placed: readonly Placed<unknown>[]): number[] => placed.map(({ index }) => index);

const byIndex = (a: Placed<unknown>, b: Placed<unknown>): number => a.index - b.index;
