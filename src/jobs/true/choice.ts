import type { ProposalPart } from '#craft/true/index.ts';

/** Which parts of a proposal are taken. */
export interface Choice {
  /** Only these, by id; null for what is usual: every move, and nothing added or taken out. */
  readonly take: readonly string[] | null;
  /** None of these, by id. */
  readonly leave: readonly string[];
  readonly addMissing: boolean;
  readonly dropStray: boolean;
}

/** Every move is taken; missing pins and strays stay proposals. */
export const usualChoice: Choice = { take: null, leave: [], addMissing: false, dropStray: false };

export function isTaken(part: ProposalPart, { take, leave, addMissing, dropStray }: Choice): boolean {
  if (leave.includes(part.id)) return false;
  if (take?.includes(part.id)) return true;
  if (part.kind === 'add') return addMissing;
  if (part.kind === 'remove') return dropStray;
  return take === null;
}

/** An id in the choice that names no part of the proposal, or null. */
export function unknownPart(ids: ReadonlySet<string>, { take, leave }: Choice): string | null {
  return [...(take ?? []), ...leave].find((id) => !ids.has(id)) ?? null;
}
