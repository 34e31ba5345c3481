import { type Recipe, recipeSchema } from './recipe.ts';
import { mapFigures } from './walk.ts';

/**
 * The recipe of the same pattern `factor` times as large: its millimetres multiplied, its angles and counts as they were.
 * Null where a figure leaves the range in which it can be drafted.
 */
export function scaledRecipe(recipe: Recipe, factor: number): Recipe | null {
  const scaled = recipeSchema.safeParse(
    mapFigures(recipe, ({ value, takes }) =>
      takes.kind === 'length' && typeof value === 'number' ? value * factor : value,
    ),
  );
  return scaled.success ? scaled.data : null;
}
