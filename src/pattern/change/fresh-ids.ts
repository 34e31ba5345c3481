import type { Identified } from './change.ts';

/** Ids for records that come after all others of a list: the letter and the next numbers that none of them bears. */
export function freshIds(list: readonly Identified[], letter: string, count: number): string[] {
  const taken = new Set(list.map(({ id }) => id));
  const ids: string[] = [];
  for (let number = list.length + 1; ids.length < count; number++) {
    if (!taken.has(`${letter}${number}`)) ids.push(`${letter}${number}`);
  }
  return ids;
}
