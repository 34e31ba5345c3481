import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { redraft } from '#craft/draft/redraft.ts';
import { draftRecipe } from '#jobs/draft/draft.ts';
import { withFigures } from '#jobs/draft/set.ts';
import { readPattern } from '#pattern/file/read.ts';
import { roundPattern } from '#pattern/file/round.ts';
import { writePattern } from '#pattern/file/write.ts';
import { recipeSchema } from '#pattern/recipe/recipe.ts';
import { figuresOf } from '#pattern/recipe/walk.ts';
import { arbitraryRecipe } from '../../support/arbitrary-recipe.ts';

const kinds = recipeSchema.options.map((schema) => ({ kind: schema.shape.kind.value as string, schema }));

describe.each(kinds)('any $kind that the schema takes (seed 23)', ({ kind, schema }) => {
  test('is drafted to a whole pattern, the same each time, or refused with a figure of its own', () => {
    const counts = { drafted: 0, refused: 0 };
    fc.assert(
      fc.property(arbitraryRecipe(schema), (given) => {
        const recipe = recipeSchema.parse(given);
        const made = draftRecipe({ from: 'recipe', recipe, about: {} }, []);
        if (made.ok) {
          counts.drafted++;
          const text = writePattern(made.value.file.pattern);
          const read = readPattern(text);
          if (!read.ok) throw new Error(JSON.stringify(read.trouble));
          expect(read.value.recipe).toEqual(recipe);
          const again = redraft({ ...read.value, recipe }, recipe);
          expect(again).toEqual({
            ok: true,
            value: { pattern: roundPattern(read.value), kept: 0, lost: [] },
          });
          return;
        }
        counts.refused++;
        if (made.trouble.kind !== 'recipe-figure') throw new Error(JSON.stringify(made.trouble));
        const { figure, nearest, given: value } = made.trouble;
        // A figure, or a list or group of them, such as the points of a course.
        const paths = figuresOf(recipe).map(({ path }) => path);
        expect(paths.filter((path) => path === figure || path.startsWith(`${figure}.`))).not.toEqual([]);
        if (nearest === undefined) return;
        expect(nearest).not.toBe(value);
        // The figure that is said to work is one that the recipe takes.
        expect(withFigures(recipe, [{ path: figure, text: String(nearest) }])).toMatchObject({ ok: true });
      }),
      { seed: 23, numRuns: 300 },
    );
    // Figures taken at random hardly ever make a course that a tape can follow, or sides that meet at corners: those
    // that do are tested in tape/ and frame/.
    if (kind !== 'tape' && kind !== 'frame') expect(counts.drafted).toBeGreaterThan(0);
    expect(counts.refused).toBeGreaterThan(10);
  });
});
