import type { Point } from '#base/geometry/point.ts';
import { Groups, shortestTree } from './tree.ts';

/**
 * Splits pins into groups that stand apart: the shortest tree that joins them is cut wherever a link is much longer than
 * usual (single-linkage clustering). Groups too small to be a motif are scattered pins.
 */
export function clusters(
  indices: readonly number[],
  pins: readonly Point[],
): { groups: number[][]; scattered: number[] } {
  const tree = shortestTree(indices.map((index) => pins[index]!));
  const usual = tree[tree.length >> 1]?.length ?? 0;
  const joined = new Groups(indices.length);
  for (const { from, to, length } of tree) if (length <= MUCH_LONGER * usual) joined.join(from, to);

  const members = new Map<number, number[]>();
  for (const [at, index] of indices.entries()) {
    const group = members.get(joined.of(at));
    if (group) group.push(index);
    else members.set(joined.of(at), [index]);
  }
  const all = [...members.values()];
  const isMotif = (group: readonly number[]) => group.length >= LEAST_PINS;
  return { groups: all.filter(isMotif), scattered: all.filter((group) => !isMotif(group)).flat() };
}

/** Both are our own choice. The tree's links come shortest first, so that the middle one is the median. */
const MUCH_LONGER = 4;
const LEAST_PINS = 4;
