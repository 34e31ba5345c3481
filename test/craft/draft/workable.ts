import type { z } from 'zod';
import { draft } from '#craft/draft/draft.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';

/**
 * The recipe with each figure that cannot be met put to the nearest that works, as the trouble tells; null where no
 * nearest is told, or where so many steps do not reach a recipe that works.
 */
export function workable<Kind extends Recipe>(schema: z.ZodType<Kind>, recipe: Kind, most = 12): Kind | null {
  const made = draft(recipe);
  if (made.ok) return recipe;
  const { figure, nearest } = made.trouble;
  if (nearest === undefined || most === 0) return null;
  return workable(schema, schema.parse(withFigure(recipe, figure.split('.'), nearest)), most - 1);
}

function withFigure(value: unknown, [key, ...path]: readonly string[], figure: number): unknown {
  if (key === undefined) return figure;
  if (Array.isArray(value))
    return value.map((one, k) => (k === Number(key) ? withFigure(one, path, figure) : one));
  const parts = value as Readonly<Record<string, unknown>>;
  return { ...parts, [key]: withFigure(parts[key], path, figure) };
}
