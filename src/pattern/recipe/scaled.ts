import type { z } from 'zod';
import { millimetres } from './figures.ts';
import { type Recipe, recipeSchema } from './recipe.ts';

/**
 * The recipe of the same pattern `factor` times as large: its millimetres multiplied, its angles and counts as they were.
 * Null where a figure leaves the range in which it can be drafted.
 */
export function scaledRecipe(recipe: Recipe, factor: number): Recipe | null {
  const scaled = recipeSchema.safeParse(scaledBy(recipeSchema, recipe, factor));
  return scaled.success ? scaled.data : null;
}

/** A value whose millimetres, as its schema names them, are multiplied. */
function scaledBy(schema: z.core.$ZodType, value: unknown, factor: number): unknown {
  if (millimetres.get(schema) && typeof value === 'number') return value * factor;
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object':
      return Object.fromEntries(
        Object.entries(value as object).map(([key, part]) => {
          const own = def.shape[key];
          return [key, own ? scaledBy(own, part, factor) : part];
        }),
      );
    case 'array':
      return (value as readonly unknown[]).map((part) => scaledBy(def.element, part, factor));
    case 'tuple':
      return (value as readonly unknown[]).map((part, k) => {
        const own = def.items[k] ?? def.rest;
        return own ? scaledBy(own, part, factor) : part;
      });
    case 'union': {
      const own = def.options.find((option) => fits(option, value));
      return own ? scaledBy(own, value, factor) : value;
    }
    case 'optional':
    case 'default':
    case 'prefault':
    case 'nullable':
    case 'readonly':
      return value === undefined || value === null ? value : scaledBy(def.innerType, value, factor);
    default:
      return value;
  }
}

const fits = (schema: z.core.$ZodType, value: unknown): boolean =>
  (schema as z.ZodType).safeParse(value).success;
