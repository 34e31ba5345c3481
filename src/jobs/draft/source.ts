import { done, failed, type Result } from '#base/result.ts';
import type { LibraryEntry } from '#craft/draft/library/entry.ts';
import { library } from '#craft/draft/library/index.ts';
import type { Drafted } from '#craft/draft/redraft.ts';
import { decodeUtf8 } from '#pattern/container/utf8.ts';
import type { About } from '#pattern/pattern.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { RECIPE_FORMAT, readRecipe } from '#pattern/recipe-file/file.ts';
import { openToWork } from '../open.ts';
import type { Trouble } from '../trouble.ts';

/** Where a recipe comes from. */
export type RecipeSource =
  | { readonly from: 'library' | 'recipe'; readonly recipe: Recipe; readonly about: About }
  /** A pattern that keeps its recipe, with what a hand did to it since. */
  | {
      readonly from: 'pattern';
      readonly recipe: Recipe;
      readonly pattern: Drafted;
      readonly pictures: ReadonlyMap<string, Uint8Array>;
    };

/** A recipe of the library by its name; null where there is none. */
export function libraryRecipe(name: string): RecipeSource | null {
  const entry = library.find((one: LibraryEntry) => one.name === name);
  return entry ? { from: 'library', recipe: entry.recipe, about: entry.about } : null;
}

/** A recipe from the bytes of a file of ours: a recipe's own, or a pattern's that keeps it. */
export function recipeSource(bytes: Uint8Array): Result<RecipeSource, Trouble> {
  const opened = openToWork(bytes);
  if (!opened.ok) {
    const { trouble } = opened;
    const isRecipe = trouble.kind === 'not-a-pattern' && trouble.format === JSON.stringify(RECIPE_FORMAT);
    if (!isRecipe) return opened;
    // The letters were read once already, so that they are text.
    const read = readRecipe(decodeUtf8(bytes)!);
    return read.ok ? done({ from: 'recipe', ...read.value }) : read;
  }
  const { pattern, pictures } = opened.value;
  const { recipe } = pattern;
  if (!recipe) return failed({ kind: 'no-recipe' });
  return done({ from: 'pattern', recipe, pattern: { ...pattern, recipe }, pictures });
}
