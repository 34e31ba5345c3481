import { expect, test } from 'vitest';
import { library } from '#craft/draft/library/index.ts';
import { additions, countOf, growingLists } from '#jobs/draft/additions.ts';
import { draftRecipe } from '#jobs/draft/draft.ts';
import { withPart } from '#jobs/draft/parts.ts';
import { boxOfPattern } from '#pattern/pins.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';

const drafted = (recipe: Recipe) => draftRecipe({ from: 'recipe', recipe, about: {} }, []);

const cases = library.flatMap(({ name, recipe }) =>
  growingLists(recipe).map((list) => [name, list, recipe] as const),
);

test('tapes, motifs and mats of the library are among those that grow', () => {
  expect(new Set(cases.map(([, list]) => list))).toEqual(
    new Set(['tapes', 'plaits', 'leaves', 'joins', 'motifs', 'rounds']),
  );
});

test.each(cases)('%s: one more of its %s can be drafted, and taken out again', (_, list, recipe) => {
  const before = drafted(recipe);
  if (!before.ok) throw new Error(before.trouble.kind);
  const { left, right, top, bottom } = boxOfPattern(before.value.file.pattern);
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const wishes = additions(recipe, list, middle, before.value.file.pattern.pins);
  const made = wishes.map(drafted).find(({ ok }) => ok);
  if (!made?.ok) throw new Error(JSON.stringify(wishes.map(drafted)).slice(0, 2000));
  const grown = made.value.recipe;
  const count = countOf(recipe, list);
  expect(countOf(grown, list)).toBe(count + 1);
  expect(withPart(grown, `${list}.${count}`, null)).toEqual(recipe);
});

test('the only tape of a recipe stays, since without it there is no lace', () => {
  const { recipe } = library.find(({ name }) => name === 'tidal-flower')!;
  const one = withPart(recipe, 'tapes.1', null);
  expect(one && countOf(one, 'tapes')).toBe(1);
  expect(one && withPart(one, 'tapes.0', null)).toBeNull();
});
