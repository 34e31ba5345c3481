import type { About } from '#pattern/pattern.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';

/** A recipe of the library: ready to draft, and a start for one's own. */
export interface LibraryEntry {
  /** What it is asked for by, in lower case with hyphens: 'harbour-fan'. */
  readonly name: string;
  /** What a lacemaker would call it: 'Harbour fan, an edging on 45 degrees'. */
  readonly title: string;
  /** Maker, source and permission, which the drafted pattern carries. */
  readonly about: About;
  readonly recipe: Recipe;
}
