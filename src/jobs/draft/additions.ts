import { distance, type Point } from '#base/geometry/point.ts';
import type { MatRecipe } from '#pattern/recipe/mat.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import type { TapeRecipe } from '#pattern/recipe/tape.ts';
import { inFirstTime } from './first-time.ts';
import { motifWishes } from './motif-wishes.ts';
import { tapeWishes } from './tape-wishes.ts';

/** A list of a recipe into which one more can be put by hand. */
export type GrowingList = 'tapes' | 'plaits' | 'leaves' | 'joins' | 'motifs' | 'rounds';

/** The lists of a recipe that grow, in the order in which they are offered. */
export function growingLists({ kind }: Recipe): readonly GrowingList[] {
  if (kind === 'tape') return ['tapes', 'plaits', 'leaves', 'joins'];
  return kind === 'motif' ? ['motifs'] : kind === 'mat' ? ['rounds'] : [];
}

/** How many of a list there are; none where the recipe has no such list. */
export const countOf = (recipe: Recipe, list: string): number =>
  Object.hasOwn(recipe, list) ? (recipe as unknown as Record<string, readonly unknown[]>)[list]!.length : 0;

/** Whether a part is one of such a list and may be taken out; a lace of tapes has at least one. */
export function canBeRemoved(recipe: Recipe, path: string): boolean {
  const [list, number, ...rest] = path.split('.');
  const isOne = number !== undefined && rest.length === 0 && growingLists(recipe).some((one) => one === list);
  return isOne && (list !== 'tapes' || countOf(recipe, list) > 1);
}

/**
 * The recipe with one more at the end of a list, at a place of the lace where it has one: the way that is wished first,
 * then others, for where that one does not fit. Sizes are those of its neighbours, or middling (common practice, no
 * source).
 */
export function additions(
  recipe: Recipe,
  list: GrowingList,
  place: Point,
  pins: readonly Point[],
): readonly Recipe[] {
  if (recipe.kind === 'motif' && list === 'motifs') return motifWishes(recipe, place);
  if (recipe.kind === 'mat' && list === 'rounds') return roundWishes(recipe);
  if (recipe.kind !== 'tape') return [];
  const at = inFirstTime(recipe, place);
  if (list === 'tapes') return tapeWishes(recipe, at);
  return list === 'joins' ? joinWishes(recipe, at) : betweenWishes(recipe, list, at, pins);
}

/** A pin of its own at the place, or a little aside where another stands. */
const joinWishes = (recipe: TapeRecipe, { x, y }: Point): readonly Recipe[] =>
  [0, 2, -2, 4].map((aside) => ({
    ...recipe,
    joins: [...recipe.joins, { x: round(x + aside), y: round(y) }],
  }));

/** How far apart the two pins of a new plait or leaf stand at least, mm. */
const SPANS = [8, 14, 24, 4];

/** A plait or a leaf over the place: from the pin nearest to it to the nearest on its other side. */
function betweenWishes(
  recipe: TapeRecipe,
  list: GrowingList,
  place: Point,
  pins: readonly Point[],
): readonly Recipe[] {
  const near = [...pins].sort((one, other) => distance(one, place) - distance(other, place));
  const first = near[0];
  if (!first) return [];
  return SPANS.flatMap((span) => {
    const far = near.filter((pin) => distance(pin, first) >= span);
    const across = ({ x, y }: Point) =>
      (x - place.x) * (first.x - place.x) + (y - place.y) * (first.y - place.y);
    const second = far.find((pin) => across(pin) < 0) ?? far[0];
    if (!second) return [];
    const [from, to] = [first, second].map(({ x, y }) => ({ x: round(x), y: round(y) })) as [Point, Point];
    return [
      list === 'plaits'
        ? { ...recipe, plaits: [...recipe.plaits, { through: [from, to], picots: 0, loop: 1.2 }] }
        : { ...recipe, leaves: [...recipe.leaves, { from, to, width: Math.min(3, span / 4) }] },
    ];
  });
}

/** Like the round inside it, or like the outermost; else as narrow and plain as a round can be. */
function roundWishes(recipe: MatRecipe): readonly Recipe[] {
  const { rounds, outer } = recipe;
  const last = rounds.at(-1) ?? { ...outer, band: { width: 2, doubled: false, stitch: 'cloth' as const } };
  const { ground, band } = last;
  return [
    { width: last.width, length: last.length, ground, band: { ...band, doubled: false } },
    { width: last.width, length: last.length, ground, band: { ...band, doubled: true } },
    { width: 4, length: 1, ground: 'plain' as const, band: { ...band, width: 1, doubled: false } },
    { width: 2, length: 1, ground: 'plain' as const, band: { ...band, width: 1, doubled: false } },
  ].map((added) => ({ ...recipe, rounds: [...rounds, added] }));
}

const round = (mm: number): number => Number(mm.toFixed(3)) + 0;
