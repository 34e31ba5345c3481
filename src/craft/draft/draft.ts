import { done, failed, type Result } from '#base/result.ts';
import { MAX_COORDINATE } from '#pattern/file/limits.ts';
import type { About, Pattern } from '#pattern/pattern.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { draftFrame } from './frame/frame.ts';
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

/** A pattern that no file could carry: with a smaller spacing, or coming again fewer times, it can. */
function sizeTrouble(recipe: Recipe, { pins }: Pattern): DraftTrouble | null {
  const reach = pins.reduce((most, { x, y }) => Math.max(most, Math.abs(x), Math.abs(y)), 0);
  if (reach <= FARTHEST) return null;
  const trouble = { kind: 'recipe-figure', why: 'too-large' } as const;
  if (recipe.kind === 'tape') {
    const { again } = recipe;
    // The points of a course lie within reach, so that only coming again leads so far.
    const given = again?.count ?? 1;
    const most = Math.max(1, Math.floor((given * FARTHEST) / reach));
    return { ...trouble, figure: 'again.count', given, unit: 'count', most, nearest: most };
  }
  const { spacing } = recipe;
  const most = Math.floor((spacing * FARTHEST * 1000) / reach) / 1000;
  return { ...trouble, figure: 'spacing', given: spacing, unit: 'mm', most, nearest: most };
}

/** Room is left for marks that reach out beyond the pins. */
const FARTHEST = 0.9 * MAX_COORDINATE;

function draftKind(recipe: Recipe): Result<Pattern, DraftTrouble> {
  switch (recipe.kind) {
    case 'strip':
      return draftStrip(recipe);
    case 'frame':
      return draftFrame(recipe);
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
