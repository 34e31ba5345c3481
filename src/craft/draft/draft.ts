import { done, failed, type Result } from '#base/result.ts';
import { MAX_COORDINATE } from '#pattern/file/limits.ts';
import type { About, Pattern } from '#pattern/pattern.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { draftMat } from './mat/mat.ts';
import { draftMotif } from './motif/motif.ts';
import { draftRing } from './ring/ring.ts';
import { draftStrip } from './strip/strip.ts';
import { draftTape } from './tape/tape.ts';
import type { DraftTrouble } from './trouble.ts';

/**
 * The pattern that a recipe makes, or the figure that cannot be met. Same recipe, same pins, to the last bit; the
 * pattern keeps the recipe, so that it can be made anew (`redraft.ts`).
 */
export function draft(recipe: Recipe, about: About = {}): Result<Pattern, DraftTrouble> {
  const drafted = draftKind(recipe);
  if (!drafted.ok) return drafted;
  const trouble = sizeTrouble(recipe, drafted.value);
  return trouble ? failed(trouble) : done({ ...drafted.value, about, recipe });
}

/** A pattern that no file could carry: with a smaller spacing it can. */
function sizeTrouble({ spacing }: Recipe, { pins }: Pattern): DraftTrouble | null {
  const reach = pins.reduce((most, { x, y }) => Math.max(most, Math.abs(x), Math.abs(y)), 0);
  if (reach <= FARTHEST) return null;
  const most = Math.floor((spacing * FARTHEST * 1000) / reach) / 1000;
  return {
    kind: 'recipe-figure',
    figure: 'spacing',
    given: spacing,
    unit: 'mm',
    why: 'too-large',
    most,
    nearest: most,
  };
}

/** Room is left for marks that reach out beyond the pins. */
const FARTHEST = 0.9 * MAX_COORDINATE;

function draftKind(recipe: Recipe): Result<Pattern, DraftTrouble> {
  switch (recipe.kind) {
    case 'strip':
      return draftStrip(recipe);
    case 'ring':
      return draftRing(recipe);
    case 'mat':
      return draftMat(recipe);
    case 'motif':
      return draftMotif(recipe);
    case 'tape':
      return draftTape(recipe);
  }
}
