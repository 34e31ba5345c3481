import fc from 'fast-check';
import { draft } from '#craft/draft/draft.ts';
import type { DraftTrouble } from '#craft/draft/trouble.ts';
import type { About, Pattern } from '#pattern/pattern.ts';
import type { FrameRecipe } from '#pattern/recipe/frame.ts';

/** Demo data, so that looking over finds a maker and a permission. */
export const about: About = {
  name: 'Trial frame',
  maker: 'Quayside Workshop',
  source: 'Drafted for a test',
  permission: 'Free to copy',
};

export const base: FrameRecipe = {
  kind: 'frame',
  part: 'frame',
  across: 4,
  down: 4,
  spacing: 5,
  angle: 45,
  length: 6,
  width: 8,
  tolerance: 0.25,
};

export function drafted(recipe: FrameRecipe): Pattern {
  const result = draft(recipe, about);
  if (!result.ok) throw new Error(`not drafted: ${JSON.stringify(result.trouble)}`);
  return result.value;
}

export function troubleOf(recipe: FrameRecipe): DraftTrouble {
  const result = draft(recipe, about);
  if (result.ok) throw new Error('drafted, where trouble was expected');
  return result.trouble;
}

/**
 * Corners and frames with every kind of edge, at 45 degrees or at any angle that the tolerance allows. A recipe that
 * cannot be met is taken to the nearest that can, as the trouble names it.
 */
export const anyFrame = (angles: 'straight' | 'any'): fc.Arbitrary<FrameRecipe> =>
  fc
    .record({
      part: fc.constantFrom('corner', 'frame'),
      spacing: fc.double({ min: 2, max: 12, noNaN: true }),
      angle: angles === 'straight' ? fc.constant(45) : fc.double({ min: 30, max: 75, noNaN: true }),
      across: fc.integer({ min: 3, max: 5 }),
      down: fc.integer({ min: 3, max: 5 }),
      length: fc.integer({ min: 4, max: 8 }),
      half: fc.integer({ min: 3, max: 6 }),
      edge: fc.constantFrom('straight', 'points', 'fans', 'scallops'),
      pins: fc.integer({ min: 5, max: 13 }),
    })
    .map(({ half, edge, pins, ...figures }) => {
      const width = 2 * half + (edge === 'fans' ? figures.length % 2 : 0);
      const curved = { pins, stitch: 'cloth' } as const;
      return met({
        ...base,
        ...figures,
        width,
        tolerance: 0.4,
        headside: edge === 'fans' || edge === 'scallops' ? { kind: edge, ...curved } : { kind: edge },
      });
    });

/** A recipe with each figure that cannot be met brought to the nearest that works, as the trouble says. */
export function met(recipe: FrameRecipe): FrameRecipe {
  const result = draft(recipe);
  if (result.ok) return recipe;
  const { figure, nearest } = result.trouble;
  if (nearest === undefined) throw new Error(`nothing near works: ${JSON.stringify(result.trouble)}`);
  const [part, own] = figure.split('.') as [keyof FrameRecipe, string | undefined];
  const better = own === undefined ? nearest : { ...(recipe[part] as object), [own]: nearest };
  return met({ ...recipe, [part]: better } as FrameRecipe);
}
