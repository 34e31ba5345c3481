import { figureName } from '#jobs/words/figure-names.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { figuresOf } from '#pattern/recipe/walk.ts';

/** What a step changed, as the list of steps tells it: 'Drafted anew: Spacing of the pins'. */
export function keepWords(before: Recipe, after: Recipe): string {
  const values = new Map(figuresOf(before).map(({ path, value }) => [path, value]));
  const changed = figuresOf(after).filter(({ path, value }) => values.get(path) !== value);
  const named = changed.slice(0, MOST_NAMED).map(({ path }) => figureName(path));
  const more = changed.length > MOST_NAMED ? [`${changed.length - MOST_NAMED} more`] : [];
  return named.length === 0 ? 'Drafted anew' : `Drafted anew: ${[...named, ...more].join('; ')}`;
}

const MOST_NAMED = 3;
