import { done, failed, type Result } from '#base/result.ts';
import type { About, Pattern } from '#pattern/pattern.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { draftMat } from './mat/mat.ts';
import { draftRing } from './ring/ring.ts';
import { draftStrip } from './strip/strip.ts';
import type { DraftTrouble } from './trouble.ts';

/**
 * The pattern that a recipe makes, or the figure that cannot be met. Same recipe, same pins, to the last bit; the
 * pattern keeps the recipe, so that it can be made anew (`redraft.ts`).
 */
export function draft(recipe: Recipe, about: About = {}): Result<Pattern, DraftTrouble> {
  const drafted = draftKind(recipe);
  return drafted.ok ? done({ ...drafted.value, about, recipe }) : failed(drafted.trouble);
}

function draftKind(recipe: Recipe): Result<Pattern, DraftTrouble> {
  switch (recipe.kind) {
    case 'strip':
      return draftStrip(recipe);
    case 'ring':
      return draftRing(recipe);
    case 'mat':
      return draftMat(recipe);
  }
}
