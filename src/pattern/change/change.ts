import { sameValue } from '../equal.ts';
import type { Area, Mark, Pattern, Pin, Run } from '../pattern.ts';

/**
 * One edit of a pattern, as a value: it can be applied, undone, joined with the next one and saved. It says all that
 * happens and nothing else: a pin that goes takes nothing with it unless the change says so (see `removePins`).
 * A part that does not change is absent, so `{}` changes nothing.
 */
export interface Change {
  readonly pins?: ListChange<Pin>;
  readonly runs?: ListChange<Run>;
  readonly marks?: ListChange<Mark>;
  readonly areas?: ListChange<Area>;
  readonly unit?: PartChange<'unit'>;
  readonly about?: PartChange<'about'>;
  readonly repeat?: PartChange<'repeat'>;
  readonly sizes?: PartChange<'sizes'>;
  readonly sheet?: PartChange<'sheet'>;
  readonly scale?: PartChange<'scale'>;
  readonly paper?: PartChange<'paper'>;
  readonly recipe?: PartChange<'recipe'>;
}

/**
 * Records that come, change and go. A record that only moves in the order goes and comes. `added` and `removed` are
 * in order of index, `updated` in order of id.
 */
export interface ListChange<Item extends Identified> {
  /** With its index in the list after the change. */
  readonly added: readonly Placed<Item>[];
  readonly updated: readonly (readonly [from: Item, to: Item])[];
  /** With its index in the list before the change. */
  readonly removed: readonly Placed<Item>[];
}

export interface Placed<Item> {
  readonly index: number;
  readonly record: Item;
}

/** What a part was and is; null where the pattern lacks it. */
export type PartChange<Part extends PartName> = readonly [
  from: Pattern[Part] extends infer Value ? Exclude<Value, undefined> | Lacking<Part> : never,
  to: Pattern[Part] extends infer Value ? Exclude<Value, undefined> | Lacking<Part> : never,
];
type Lacking<Part extends PartName> = undefined extends Pattern[Part] ? null : never;

export interface Identified {
  readonly id: string;
}

export const LISTS = ['pins', 'runs', 'marks', 'areas'] as const;
export const PARTS = ['unit', 'about', 'repeat', 'sizes', 'sheet', 'scale', 'paper', 'recipe'] as const;
export type PartName = (typeof PARTS)[number];

/**
 * The pattern after the change. Throws a RangeError where the change was not made for this pattern; ask `misfit`
 * first where it comes from outside.
 */
export function applyChange(pattern: Pattern, change: Change): Pattern {
  const trouble = misfit(pattern, change);
  if (trouble) throw new RangeError(`applyChange: ${JSON.stringify(trouble)}`);
  return applyFitting(pattern, change);
}

/** The pattern after a change that is known to fit it, such as one just found between it and another pattern. */
export function applyFitting(pattern: Pattern, change: Change): Pattern {
  const result: Record<string, unknown> = { ...pattern };
  for (const list of LISTS) {
    const edit = change[list] as ListChange<Identified> | undefined;
    if (edit) result[list] = applyToList(pattern[list], edit);
  }
  for (const part of PARTS) {
    const edit = change[part];
    if (!edit) continue;
    if (edit[1] === null) delete result[part];
    else result[part] = edit[1];
  }
  return result as unknown as Pattern;
}

/** The change that takes this one back. */
export function undoChange(change: Change): Change {
  const result: Record<string, unknown> = {};
  for (const list of LISTS) {
    const edit = change[list];
    if (!edit) continue;
    const updated = edit.updated.map(([from, to]) => [to, from]);
    result[list] = { added: edit.removed, updated, removed: edit.added };
  }
  for (const part of PARTS) {
    const edit = change[part];
    if (edit) result[part] = [edit[1], edit[0]];
  }
  return result as Change;
}

/** Where a change does not fit a pattern: the list with the record's id or place, or the part. */
export type Misfit =
  | { readonly kind: 'misfit'; readonly at: (typeof LISTS)[number]; readonly record: string }
  | { readonly kind: 'misfit'; readonly at: PartName };

/** The first place at which the change was not made for this pattern, or null where it fits. */
export function misfit(pattern: Pattern, change: Change): Misfit | null {
  for (const list of LISTS) {
    const edit = change[list] as ListChange<Identified> | undefined;
    const record = edit && misfitOfList(pattern[list], edit);
    if (record !== undefined) return { kind: 'misfit', at: list, record };
  }
  for (const part of PARTS) {
    const edit = change[part];
    if (edit && !sameValue(pattern[part] ?? null, edit[0])) return { kind: 'misfit', at: part };
  }
  return null;
}

function applyToList<Item extends Identified>(
  list: readonly Item[],
  { added, updated, removed }: ListChange<Item>,
): Item[] {
  const gone = new Set(removed.map(({ index }) => index));
  const become = new Map(updated.map(([{ id }, to]) => [id, to]));
  const result: Item[] = [];
  let next = 0;
  const addDue = () => {
    while (added[next]?.index === result.length) result.push(added[next++]!.record);
  };
  list.forEach((record, index) => {
    if (gone.has(index)) return;
    addDue();
    result.push(become.get(record.id) ?? record);
  });
  addDue();
  return result;
}

function misfitOfList(list: readonly Identified[], edit: ListChange<Identified>): string | undefined {
  const { added, updated, removed } = edit;
  // Only the records that the change names: an edit of one pin must be quick among a hundred thousand.
  const named = new Set([...updated.map(([{ id }]) => id), ...added.map(({ record }) => record.id)]);
  const left = new Map<string, Identified>();
  for (const record of list) if (named.has(record.id)) left.set(record.id, record);
  for (const [i, { index, record }] of removed.entries()) {
    const inOrder = i === 0 || removed[i - 1]!.index < index;
    if (!inOrder || !sameValue(list[index], record)) return record.id;
    left.delete(record.id);
  }
  const seen = new Set<string>();
  for (const [from, to] of updated) {
    if (from.id !== to.id || seen.has(to.id) || !sameValue(left.get(from.id), from)) return from.id;
    seen.add(to.id);
  }
  const length = list.length - removed.length + added.length;
  for (const [i, { index, record }] of added.entries()) {
    const inOrder = i === 0 ? index >= 0 : added[i - 1]!.index < index;
    if (!inOrder || !Number.isInteger(index) || index >= length || left.has(record.id)) return record.id;
    left.set(record.id, record);
  }
  return undefined;
}
