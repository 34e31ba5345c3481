import { library } from '#craft/draft/library/index.ts';
import { libraryRecipe, type RecipeSource, recipeSource } from '#jobs/draft/source.ts';
import { orRefuse, Refused } from '../outcome/refused.ts';
import { readInput } from './read.ts';

/** A recipe of the library by its name, or from a file: a recipe's own, or a pattern's. */
export async function openRecipe(name: string): Promise<RecipeSource> {
  const own = libraryRecipe(name);
  if (own) return own;
  try {
    return orRefuse(recipeSource(await readInput(name)), name);
  } catch (fault) {
    // A word without a dot or a folder was most likely meant as a name of the library.
    const isWord = fault instanceof Refused && fault.trouble.kind === 'no-such-file' && /^[\w-]+$/.test(name);
    if (!isWord) throw fault;
    throw new Refused({ kind: 'unknown-recipe', name, names: library.map((entry) => entry.name) }, null);
  }
}
