import { done, failed, type Result } from '#base/result.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { RingRecipe } from '#pattern/recipe/ring.ts';
import { draftStrip } from '../strip/strip.ts';
import type { DraftTrouble } from '../trouble.ts';
import { curl } from './curl.ts';
import { bendTrouble, repeatsBend } from './limits.ts';

/** A strip bent to a ring or to a part of one; see `#pattern/recipe/ring.ts`. */
export function draftRing(recipe: RingRecipe): Result<Pattern, DraftTrouble> {
  const { foot: _, arc, ...figures } = recipe;
  const strip = draftStrip({ ...figures, kind: 'strip' });
  if (!strip.ok) return strip;
  const trouble = bendTrouble(recipe, strip.value.pins);
  if (trouble !== null) return failed(trouble);
  const round = recipe.spacing * recipe.length * recipe.repeats;
  return done(curl(strip.value, repeatsBend(recipe), arc === 360 ? round : null));
}
