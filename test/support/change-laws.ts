import { expect } from 'vitest';
import { applyChange, type Change, misfit, undoChange } from '#pattern/change/change.ts';
import { readChange, writeChange } from '#pattern/change/file.ts';
import { joinChanges } from '#pattern/change/join.ts';
import { findBrokenReference } from '#pattern/file/references.ts';
import type { Pattern } from '#pattern/pattern.ts';

/**
 * Every law of a change, and of those that follow it, each made for what the one before leaves:
 * the right result; undo restores; the saved form replays the same; joined is one after the other, however they are
 * grouped; references resolve; nothing that goes in is touched.
 */
export function checkChangeLaws(before: Pattern, changes: readonly Change[], expected?: Pattern): void {
  deepFreeze(before);
  deepFreeze(changes);
  const states = [before];
  for (const change of changes) {
    const from = states.at(-1)!;
    expect(misfit(from, change)).toBeNull();
    const to = deepFreeze(applyChange(from, change));
    expect(findBrokenReference(to)).toBeNull();
    expect(applyChange(to, undoChange(change))).toEqual(from);
    expect(undoChange(undoChange(change))).toEqual(change);
    const replayed = readChange(writeChange(change));
    expect(replayed).toEqual({ ok: true, value: change });
    states.push(to);
  }
  const after = states.at(-1)!;
  if (expected) expect(after).toEqual(expected);

  const forwards = changes.reduce(joinChanges, {});
  expect(applyChange(before, forwards)).toEqual(after);
  expect(applyChange(after, undoChange(forwards))).toEqual(before);
  expect(changes.reduceRight((later, earlier) => joinChanges(earlier, later), {} as Change)).toEqual(
    forwards,
  );
  expect(joinChanges(forwards, undoChange(forwards))).toEqual(onlyMoved(forwards));
}

/** Freezes a plain value and all that is in it, so that a stray write throws at once. */
export function deepFreeze<Value>(value: Value): Value {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const item of Object.values(value)) deepFreeze(item);
  return value;
}

/** What is left of a change joined with its undoing: records that went are still told as having gone and come back. */
function onlyMoved(change: Change): Change {
  const lists = (['pins', 'runs', 'marks', 'areas'] as const).flatMap((list) => {
    const removed = change[list]?.removed ?? [];
    return removed.length > 0 ? [[list, { added: removed, updated: [], removed }]] : [];
  });
  return Object.fromEntries(lists) as Change;
}
