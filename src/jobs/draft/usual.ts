import type { Recipe } from '#pattern/recipe/recipe.ts';

/**
 * What a figure is when a part is put in, until it is changed: middling sizes (common practice, no source), and a place
 * in the middle of the ground.
 */
export function usualFigure(name: string, recipe: Recipe): string | number | boolean | object | undefined {
  if (name === 'column') return middleColumn(recipe);
  if (name === 'row') return middleRow(recipe);
  return USUAL[name];
}

const USUAL: Readonly<Record<string, string | number | boolean | object>> = {
  share: 0.4,
  pins: 9,
  depth: 2,
  depthShare: 0.2,
  perRepeat: 1,
  stitch: 'cloth',
  size: 2,
  arm: 4,
  points: 'headside',
  radius: 5,
  ground: 'plain',
  tint: '#c9b6dd',
  gimp: true,
  sharp: true,
  clearance: 2,
  footside: 'left',
  count: 3,
  step: { x: 0, y: 50 },
  centre: { x: 0, y: 0 },
};

/** Even, as the row is: only then do both meet in a place of the lattice. */
const middleColumn = (recipe: Recipe): number =>
  'width' in recipe && recipe.kind !== 'motif' ? Math.max(2, 2 * Math.round(recipe.width / 4)) : 2;

const middleRow = (recipe: Recipe): number =>
  'length' in recipe && recipe.kind !== 'motif' ? 2 * Math.floor(recipe.length / 2) : 0;
