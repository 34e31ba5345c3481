/**
 * The order of a list after both its drafting and a hand have changed it: `fresh` without what the hand took out
 * (`old` but not `mine`), with what it put in (`mine` but not `old`) behind the neighbour that it was put behind.
 * Where the hand changed the order itself, its order counts and what is newly drafted goes in.
 */
export function mergedOrder(
  old: readonly string[],
  mine: readonly string[],
  fresh: readonly string[],
): string[] {
  const [inOld, inMine, inFresh] = [new Set(old), new Set(mine), new Set(fresh)];
  const isKept = (id: string) => (inFresh.has(id) ? inMine.has(id) || !inOld.has(id) : !inOld.has(id));
  const stayed = mine.filter((id) => inOld.has(id));
  const reordered = old.filter((id) => inMine.has(id)).some((id, at) => id !== stayed[at]);
  const [base, other] = reordered ? [mine, fresh] : [fresh, mine];
  return withExtras(base.filter(isKept), other.filter(isKept));
}

/** `base`, and what only `other` has behind the one of `base` that it stands behind there. */
function withExtras(base: readonly string[], other: readonly string[]): string[] {
  const inBase = new Set(base);
  const first: string[] = [];
  const behind = new Map<string, string[]>();
  let extras = first;
  for (const id of other) {
    if (inBase.has(id)) {
      extras = [];
      behind.set(id, extras);
    } else extras.push(id);
  }
  return [...first, ...base.flatMap((id) => [id, ...(behind.get(id) ?? [])])];
}
