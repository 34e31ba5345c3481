import { describe, expect, test } from 'vitest';
import { library } from '#craft/draft/library/index.ts';
import { draftFitting } from '#jobs/draft/fit.ts';
import { partsOf, withPart, withUsual } from '#jobs/draft/parts.ts';
import { libraryRecipe } from '#jobs/draft/source.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import { recipeSchema } from '#pattern/recipe/recipe.ts';
import { figuresOf } from '#pattern/recipe/walk.ts';

const recipeOf = (name: string) => libraryRecipe(name)!.recipe;
const partOf = (name: string, path: string) => partsOf(recipeOf(name)).find((part) => part.path === path);

describe('the parts of a recipe', () => {
  test('are those that can be of another kind, left out or put in', () => {
    expect(partOf('capstan-fan', 'headside')).toMatchObject({ now: 'fans', canBeLeftOut: true });
    expect(partOf('capstan-fan', 'headside')?.kinds).toContain('scallops');
    expect(partOf('plain-strip', 'headside')).toMatchObject({ now: null });
    expect(partOf('breakwater', 'areas.2')).toMatchObject({ now: null });
    expect(partOf('breakwater', 'areas.0')).toMatchObject({ now: 'trail' });
    expect(partOf('compass', 'centre')).toMatchObject({ now: 'ring', canBeLeftOut: false });
    expect(partOf('harbour-heart', 'clearance')).toMatchObject({ now: null, kinds: [] });
  });

  test('whatever is put in, made another kind or left out, a recipe comes of it', () => {
    for (const { recipe } of library) {
      for (const { path, kinds, now, canBeLeftOut } of partsOf(recipe)) {
        const wishes = [...kinds, ...(canBeLeftOut && now !== null ? [null] : [])];
        for (const kind of wishes) {
          const changed = withPart(recipe, path, kind);
          expect(recipeSchema.safeParse(changed).success, `${path} ${kind}`).toBe(true);
          if (kind === now) expect(changed).toEqual(recipe);
        }
        if (kinds.length === 0 && now === null) expect(withUsual(recipe, path), path).not.toBeNull();
      }
    }
  });

  test('keep what the kinds have in common', () => {
    const scallops = withPart(recipeOf('capstan-fan'), 'headside', 'scallops');
    expect(scallops).toMatchObject({ headside: { kind: 'scallops', pins: 9, stitch: 'cloth' } });
    expect(withPart(scallops!, 'headside', 'straight')).toMatchObject({ headside: { kind: 'straight' } });
    expect(withPart(scallops!, 'headside', null)).not.toHaveProperty('headside');
  });

  test('that are put in are made to fit', () => {
    const source = libraryRecipe('capstan-fan')!;
    const recipe = withPart(source.recipe, 'areas.0', 'diamond')!;
    const job = draftFitting({ ...source, recipe }, 'areas.0');
    expect(job.ok && job.value.recipe).toMatchObject({ areas: [{ shape: 'diamond', size: 1 }] });
  });

  test('that cannot be made to fit are refused as they were asked for', () => {
    const source = libraryRecipe('capstan-fan')!;
    const recipe = withPart(source.recipe, 'headside', 'footside')!;
    const job = draftFitting({ ...source, recipe }, 'headside');
    expect(!job.ok && job.trouble).toMatchObject({ kind: 'recipe-figure', figure: 'width' });
  });
});

describe('the names of figures', () => {
  test.each([
    ['headside.pins', '', 'Headside, pins'],
    ['headside.pins', 'headside', 'Pins'],
    ['areas.0.size', '', 'Area 1, size'],
    ['rounds.1.areas.0.size', 'rounds.1', 'Area 1, size'],
    ['tapes.0.course.through.2.x', '', 'Tape 1, point 3, across'],
    ['spacing', '', 'Spacing of the pins'],
  ])('%s within "%s" is %s', (path, within, name) => expect(figureName(path, within)).toBe(name));

  test('are words, for every figure of the library', () => {
    for (const { recipe } of library) {
      for (const { path } of figuresOf(recipe)) expect(figureName(path)).toMatch(/^[A-Z][a-z0-9 ,]*$/);
    }
  });
});
