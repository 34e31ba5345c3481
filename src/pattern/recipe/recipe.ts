import { z } from 'zod';
import { frameRecipe } from './frame.ts';
import { matRecipe } from './mat.ts';
import { motifRecipe } from './motif.ts';
import { ringRecipe } from './ring.ts';
import { stripRecipe } from './strip.ts';
import { tapeRecipe } from './tape.ts';

/**
 * From which figures a pattern was drafted. The pattern keeps it, so that a figure can be changed and the pins made
 * anew. Lengths are mm; angles are degrees, since a recipe is read and written by people. One file a kind.
 */
export const recipeSchema = z.discriminatedUnion('kind', [
  stripRecipe,
  frameRecipe,
  ringRecipe,
  matRecipe,
  motifRecipe,
  tapeRecipe,
]);

export type Recipe = z.output<typeof recipeSchema>;
export type RecipeKind = Recipe['kind'];
