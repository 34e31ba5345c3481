import fc from 'fast-check';
import { draft } from '#craft/draft/draft.ts';
import type { DraftTrouble } from '#craft/draft/trouble.ts';
import type { About, Pattern } from '#pattern/pattern.ts';
import type { StripRecipe } from '#pattern/recipe/strip.ts';

/** Demo data, so that looking over finds a maker and a permission. */
export const about: About = {
  name: 'Trial strip',
  maker: 'Quayside Workshop',
  source: 'Drafted for a test',
  permission: 'Free to copy',
};

export const base: StripRecipe = {
  kind: 'strip',
  spacing: 5,
  angle: 45,
  repeats: 3,
  length: 4,
  width: 8,
  ground: 'plain',
};

export function drafted(recipe: StripRecipe): Pattern {
  const result = draft(recipe, about);
  if (!result.ok) throw new Error(`not drafted: ${JSON.stringify(result.trouble)}`);
  return result.value;
}

export function troubleOf(recipe: StripRecipe): DraftTrouble {
  const result = draft(recipe, about);
  if (result.ok) throw new Error('drafted, where trouble was expected');
  return result.trouble;
}

/** Strips of plain ground with every kind of edge, over the whole range of angles and sizes. */
export const anyStrip: fc.Arbitrary<StripRecipe> = fc
  .record({
    // The least spacing at which pins stand apart at any angle of the range.
    spacing: fc.double({ min: 1.4, max: 20, noNaN: true }),
    angle: fc.double({ min: 30, max: 75, noNaN: true }),
    repeats: fc.integer({ min: 2, max: 4 }),
    // A scrap of one repeat does not tell truing a footside set aside from pins that strayed.
    length: fc.integer({ min: 4, max: 8 }),
    half: fc.integer({ min: 2, max: 7 }),
    gap: fc.option(fc.double({ min: 0.2, max: 1, noNaN: true }), { nil: undefined }),
    edge: fc.constantFrom('straight', 'footside', 'points', 'fans', 'scallops'),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ half, gap, edge, share, ...figures }) => {
    const narrowest = edge === 'footside' ? 6 : 4;
    const width = Math.max(narrowest, 2 * half) + (edge === 'fans' ? figures.length % 2 : 0);
    const recipe: StripRecipe = {
      ...base,
      ...figures,
      width,
      footside: gap === undefined ? { kind: 'plain' } : { kind: 'passives', share: gap },
    };
    if (edge !== 'fans' && edge !== 'scallops') return { ...recipe, headside: { kind: edge } };
    const withPins = (pins: number): StripRecipe => ({
      ...recipe,
      headside: { kind: edge, pins, stitch: 'cloth' },
    });
    // As many pins as fit, or a share of them.
    const least = nearestPins(withPins(3), 3);
    const most = nearestPins(withPins(500), 500);
    return withPins(Math.round(least + share * (most - least)));
  });

function nearestPins(recipe: StripRecipe, given: number): number {
  const result = draft(recipe, about);
  return result.ok ? given : (result.trouble.nearest ?? given);
}
