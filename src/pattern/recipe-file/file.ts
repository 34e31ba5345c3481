import { z } from 'zod';
import { done, failed, type Result } from '#base/result.ts';
import { aboutSchema } from '../file/schema.ts';
import { parsePart } from '../file/shape.ts';
import { newerVersion } from '../file/upgrades.ts';
import { parseJson } from '../json/parse.ts';
import type { About } from '../pattern.ts';
import { type Recipe, recipeSchema } from '../recipe/recipe.ts';
import type { PatternTrouble } from '../trouble.ts';

/** Says of a JSON file that it holds a recipe of ours. */
export const RECIPE_FORMAT = 'pinlight-recipe';
export const RECIPE_VERSION = 1;

/** A recipe is figures, and a curve or two: no file longer than this is one. */
export const MAX_RECIPE_LENGTH = 1_000_000;
const LIMITS = { length: MAX_RECIPE_LENGTH, values: 100_000, depth: 16 };

/** A recipe with what its pattern will say of itself. */
export interface RecipeWithAbout {
  readonly about: About;
  readonly recipe: Recipe;
}

export const recipeFileSchema = z
  .strictObject({
    format: z.literal(RECIPE_FORMAT),
    version: z.literal(RECIPE_VERSION),
    about: aboutSchema.default({}).describe('What the drafted pattern says of itself.'),
    recipe: recipeSchema,
  })
  .meta({ title: 'Pinlight recipe' });

/** A recipe from the text of its file, or the first thing that stops it. Nothing in the text is trusted. */
export function readRecipe(text: string): Result<RecipeWithAbout, PatternTrouble> {
  const parsed = parseJson(text, LIMITS);
  if (!parsed.ok) return parsed;
  const newer = newerVersion(parsed.value, RECIPE_VERSION);
  if (newer !== null) return failed({ kind: 'newer-version', version: newer, newest: RECIPE_VERSION });
  const shaped = parsePart(recipeFileSchema, parsed.value, []);
  return shaped.ok ? done({ about: shaped.value.about, recipe: shaped.value.recipe }) : shaped;
}

/** The text of a recipe's file, one figure a line, for people to edit. Its figures keep all their digits. */
export const writeRecipe = ({ about, recipe }: RecipeWithAbout): string =>
  `${JSON.stringify({ format: RECIPE_FORMAT, version: RECIPE_VERSION, about, recipe }, null, 2)}\n`;

/** The JSON Schema (draft 2020-12) of recipe files, as it is published. */
export const recipeJsonSchema = (): unknown =>
  z.toJSONSchema(recipeFileSchema, { target: 'draft-2020-12', io: 'input' });
