import { done, type Result } from '#base/result.ts';
import { anchorsOf } from '#pattern/anchors.ts';
import { applyChange } from '#pattern/change/change.ts';
import { removePins } from '#pattern/change/remove-pins.ts';
import { roundPattern } from '#pattern/file/round.ts';
import type { Area, Mark, Pattern, Pin, Run } from '#pattern/pattern.ts';
import { pinsById } from '#pattern/pins.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { draft } from './draft.ts';
import { carryBetween } from './redraft/carry.ts';
import { type LostEdit, mergedList } from './redraft/list.ts';
import { mergedParts } from './redraft/parts.ts';
import {
  carriedArea,
  carriedMark,
  type Ground,
  mergedArea,
  mergedFields,
  mergedMark,
  mergedPin,
  mergedRun,
  type Three,
} from './redraft/records.ts';
import type { DraftTrouble } from './trouble.ts';

/** A pattern drafted anew, and what became of the edits that a hand had made since it was drafted. */
export interface Redrafted {
  readonly pattern: Pattern;
  /** How many records that a hand moved, changed, put in or took out are so in the new draft too. */
  readonly kept: number;
  /** Those that could not be kept. */
  readonly lost: readonly LostEdit[];
}

/** A pattern that keeps its recipe. */
export type Drafted = Pattern & { readonly recipe: Recipe };

/**
 * The pattern remade from a recipe with other figures. What a hand did since it was drafted is what sets it apart from
 * the draft of its own recipe, record by record and id by id: that is done again on the new draft, or told as lost.
 * Numbers are taken and given to the 0.001 that a file carries, so that a file's rounding is not taken for an edit.
 * The trouble may be with the old recipe too, where it was never drafted by this program.
 */
export function redraft(pattern: Drafted, recipe: Recipe): Result<Redrafted, DraftTrouble> {
  const before = draft(pattern.recipe);
  if (!before.ok) return before;
  const after = draft(recipe);
  if (!after.ok) return after;

  const mine = roundPattern(pattern);
  const ids = new Set(mine.pins.map(({ id }) => id));
  const removed = before.value.pins.flatMap(({ id }) => (ids.has(id) ? [] : [id]));
  const old = roundPattern(without(before.value, removed));
  const fresh = roundPattern(without(after.value, removed));
  const { parts, ...lists } = mergedLists({ old, mine, fresh });
  const merged: Pattern = {
    ...parts,
    pins: lists.pins.records,
    runs: lists.runs.records,
    marks: lists.marks.records,
    areas: lists.areas.records,
    about: mine.about,
    sizes: mergedFields({ old: old.sizes, mine: mine.sizes, fresh: fresh.sizes }),
    recipe,
  };
  const all = Object.values(lists);
  return done({
    pattern: roundPattern(merged),
    kept: all.reduce((sum, { kept }) => sum + kept, 0) + removed.length,
    lost: all.flatMap(({ lost }) => lost),
  });
}

/** A draft without the pins that the hand took out, with all that this means for runs, marks and areas. */
function without(drafted: Pattern, removed: readonly string[]): Pattern {
  const pins = pinsById(drafted);
  const there = removed.filter((id) => pins.has(id));
  return there.length === 0 ? drafted : applyChange(drafted, removePins(drafted, there));
}

function mergedLists({ old, mine, fresh }: Three<Pattern>) {
  const ground: Ground = {
    old: pinsById(old),
    fresh: pinsById(fresh),
    carry: carryBetween(old.pins, pinsById(fresh)),
  };
  const pins = mergedList<Pin>('pins', { old: old.pins, mine: mine.pins, fresh: fresh.pins }, () => [], {
    changed: mergedPin,
    added: (pin) => ({ ...pin, ...ground.carry(pin) }),
  });
  const stand = new Set(pins.records.map(({ id }) => id));
  const gone = (named: readonly string[]) => named.filter((id) => !stand.has(id));
  return {
    pins,
    runs: mergedList<Run>(
      'runs',
      { old: old.runs, mine: mine.runs, fresh: fresh.runs },
      (run) => gone(run.pins),
      {
        changed: mergedRun,
        added: (run) => run,
      },
    ),
    marks: mergedList<Mark>(
      'marks',
      { old: old.marks, mine: mine.marks, fresh: fresh.marks },
      (mark) => gone(anchorsOf(mark).flatMap(pinOf)),
      {
        changed: (three) => mergedMark(three, ground),
        added: (mark) => carriedMark(mark, ground.carry),
      },
    ),
    areas: mergedList<Area>(
      'areas',
      { old: old.areas, mine: mine.areas, fresh: fresh.areas },
      (area) => gone(area.outline.flatMap(pinOf)),
      {
        changed: (three) => mergedArea(three, ground),
        added: (area) => carriedArea(area, ground.carry),
      },
    ),
    parts: mergedParts({ old, mine, fresh }, stand),
  };
}

const pinOf = (anchor: object): string[] => ('pin' in anchor ? [anchor.pin as string] : []);
