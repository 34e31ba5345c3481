import { distance, type Point } from '#base/geometry/point.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import type { TapeRecipe } from '#pattern/recipe/tape.ts';
import { type Guide, type GuideSpot, onLine, rounded, straightLine } from './guide.ts';
import { motifGuides } from './of-motif.ts';
import { tapeGuide } from './of-tape.ts';

/** Everything in a recipe that is drawn by points; nothing where all of it is figures. */
export function guidesOf(recipe: Recipe): Guide[] {
  if (recipe.kind === 'motif') return recipe.motifs.flatMap((_, at) => motifGuides(recipe, at));
  if (recipe.kind !== 'tape') return [];
  return TAPE_PARTS.flatMap((list) => recipe[list].map((_, at) => TAPE_GUIDES[list](recipe, at)));
}

/** What is drawn by points at one path of a recipe; null where nothing is. The others are not looked at. */
export function guideAt(recipe: Recipe, path: string): Guide | null {
  const [list, number] = path.split('.');
  const at = Number(number);
  if (recipe.kind === 'motif') {
    return recipe.motifs[at] ? (motifGuides(recipe, at).find((guide) => guide.path === path) ?? null) : null;
  }
  const part = TAPE_PARTS.find((one) => one === list);
  return recipe.kind === 'tape' && part && recipe[part][at] ? TAPE_GUIDES[part](recipe, at) : null;
}

function plaitGuide(recipe: TapeRecipe, at: number): Guide {
  const plait = recipe.plaits[at]!;
  const { through } = plait;
  const put = (points: typeof through): Recipe => ({
    ...recipe,
    plaits: recipe.plaits.with(at, { ...plait, through: points }),
  });
  return {
    path: `plaits.${at}`,
    points: through.map(onLine),
    line: straightLine(through),
    move: (k, place) => put(through.with(k, rounded(place))),
    add: (spot) => put(through.toSpliced(spot.after + 1, 0, rounded(spot))),
    remove: (k) => (through.length > 2 ? put(through.toSpliced(k, 1)) : null),
    setSharp: null,
  };
}

function leafGuide(recipe: TapeRecipe, at: number): Guide {
  const leaf = recipe.leaves[at]!;
  const ends = [leaf.from, leaf.to];
  return {
    path: `leaves.${at}`,
    points: ends.map(onLine),
    line: straightLine(ends),
    move: (k, place) => ({
      ...recipe,
      leaves: recipe.leaves.with(at, { ...leaf, [k === 0 ? 'from' : 'to']: rounded(place) }),
    }),
    add: null,
    remove: () => null,
    setSharp: null,
  };
}

function joinGuide(recipe: TapeRecipe, at: number): Guide {
  return {
    path: `joins.${at}`,
    points: [onLine(recipe.joins[at]!)],
    line: [],
    move: (_, place) => ({ ...recipe, joins: recipe.joins.with(at, rounded(place)) }),
    add: null,
    remove: () => ({ ...recipe, joins: recipe.joins.toSpliced(at, 1) }),
    setSharp: null,
  };
}

const TAPE_GUIDES = { tapes: tapeGuide, plaits: plaitGuide, leaves: leafGuide, joins: joinGuide } as const;
const TAPE_PARTS = ['tapes', 'plaits', 'leaves', 'joins'] as const;

/** The spot of a line that lies nearest to a place, and how far off it is; null where there is no line. */
export function nearestSpot(
  line: readonly GuideSpot[],
  place: Point,
): { readonly spot: GuideSpot; readonly away: number } | null {
  let best: { spot: GuideSpot; away: number } | null = null;
  for (const [k, from] of line.entries()) {
    const to = line[k + 1];
    const spot = to && to.after === from.after ? onStep(from, to, place) : from;
    const away = distance(spot, place);
    if (!best || away < best.away) best = { spot, away };
  }
  return best;
}

function onStep(from: GuideSpot, to: GuideSpot, { x, y }: Point): GuideSpot {
  const [across, down] = [to.x - from.x, to.y - from.y];
  const size = across * across + down * down;
  const share = size === 0 ? 0 : ((x - from.x) * across + (y - from.y) * down) / size;
  const t = Math.min(1, Math.max(0, share));
  return {
    x: from.x + t * across,
    y: from.y + t * down,
    after: from.after,
    share: from.share + t * (to.share - from.share),
  };
}

/** The middle of the line behind a point, where a point can be put in without looking; null where there is no line. */
export const spotBehind = (line: readonly GuideSpot[], after: number): GuideSpot | null => {
  const own = line.filter((spot) => spot.after === after);
  const first = own[0];
  if (!first) return null;
  if (own.length > 2) return own.find(({ share }) => share >= 0.5) ?? null;
  const next = line[line.indexOf(first) + 1];
  return next ? { x: (first.x + next.x) / 2, y: (first.y + next.y) / 2, after, share: 0.5 } : null;
};
