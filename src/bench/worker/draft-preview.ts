import type { Progress } from '#base/progress.ts';
import type { Drafted } from '#craft/draft/redraft.ts';
import { draftRecipe } from '#jobs/draft/draft.ts';
import { changeBetween } from '#pattern/change/between.ts';
import type { Change } from '#pattern/change/change.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';

/** A pattern that is drafted anew many times: the worker keeps it by its number, so that it is handed over once. */
export interface KeptPattern {
  readonly number: number;
  /** Null where the worker should have it. */
  readonly pattern: Drafted | null;
}

let kept: KeptPattern | null = null;

/**
 * What drafting a pattern anew from another recipe changes in it; null where it cannot be drafted. The page has to
 * read no more than that, and the sheet to paint no more.
 */
export function draftPreview(
  given: KeptPattern,
  recipe: Recipe,
  _progress: Progress,
): Change | null | 'pattern-wanted' {
  if (given.pattern) kept = given;
  if (!kept?.pattern || kept.number !== given.number) return 'pattern-wanted';
  const { pattern } = kept;
  const job = draftRecipe({ from: 'pattern', recipe, pattern, pictures: NO_PICTURES }, []);
  return job.ok ? changeBetween(pattern, job.value.file.pattern) : null;
}

const NO_PICTURES: ReadonlyMap<string, Uint8Array> = new Map();
