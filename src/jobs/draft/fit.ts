import type { Result } from '#base/result.ts';
import type { Trouble } from '../trouble.ts';
import { type DraftJob, draftRecipe } from './draft.ts';
import { withFigures } from './set.ts';
import type { RecipeSource } from './source.ts';

/** Figures of a part that are brought to where they fit; then it is given up. */
const MOST_ROUNDS = 8;

/**
 * Drafts a recipe into which a part was just put. Figures of that part which cannot be met are taken to the nearest
 * that can: nobody has chosen them yet. Where that leads nowhere the trouble is with the recipe as it was given.
 */
export function draftFitting(source: RecipeSource, path: string): Result<DraftJob, Trouble> {
  const first = draftRecipe(source, []);
  let job = first;
  let { recipe } = source;
  for (let round = 0; round < MOST_ROUNDS && !job.ok; round++) {
    const { trouble } = job;
    if (trouble.kind !== 'recipe-figure' || trouble.nearest === undefined) return first;
    if (!trouble.figure.startsWith(`${path}.`)) return first;
    const nearer = withFigures(recipe, [{ path: trouble.figure, text: String(trouble.nearest) }]);
    if (!nearer.ok) return first;
    recipe = nearer.value;
    job = draftRecipe({ ...source, recipe }, []);
  }
  return job.ok ? job : first;
}
