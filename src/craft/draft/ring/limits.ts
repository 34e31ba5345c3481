import { PointIndex } from '#base/geometry/point-index.ts';
import type { Pin } from '#pattern/pattern.ts';
import type { RingRecipe } from '#pattern/recipe/ring.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';
import { type Bend, bendOf } from './bend.ts';

/**
 * What stands in the way of bending a strip: one side of it would be opened too far against the other, or pins of its
 * narrow side would stand too near each other. Both are cured by more repeats; the trouble names the fewest that work.
 */
export function bendTrouble(
  recipe: RingRecipe,
  strip: readonly Pin[],
  bend: (repeats: number) => Bend,
): DraftTrouble | null {
  const widest = strip.reduce((most, { x }) => Math.max(most, x), 0);
  const narrowest = strip.reduce((least, { x }) => Math.min(least, x), 0);
  const isOpen = (repeats: number): boolean =>
    Math.exp(bend(repeats).rate * (widest - narrowest)) <= MOST_GROWTH;
  const pairs = nearPairs(strip);
  const standsClear = (repeats: number): boolean => {
    const { place } = bend(repeats);
    return pairs.every(([p, q]) => {
      const [a, b] = [place(p), place(q)];
      return Math.hypot(a.x - b.x, a.y - b.y) >= LEAST_SPACING - ROUNDING;
    });
  };
  const trouble = (why: DraftTrouble['why'], works: (repeats: number) => boolean): DraftTrouble => {
    const nearest = fewest(recipe.repeats, works);
    const found = nearest === null ? {} : { least: nearest, nearest };
    return { kind: 'recipe-figure', figure: 'repeats', given: recipe.repeats, unit: 'count', why, ...found };
  };
  const both = (repeats: number): boolean => isOpen(repeats) && standsClear(repeats);
  if (!isOpen(recipe.repeats)) return trouble('bend-too-tight', both);
  if (!standsClear(recipe.repeats)) return trouble('pins-too-close', both);
  return null;
}

export const repeatsBend =
  ({ spacing, length, arc, foot }: RingRecipe) =>
  (repeats: number): Bend =>
    bendOf({ spacing, spacings: length * repeats, arc: (arc * Math.PI) / 180, foot });

/** Ground that is opened farther than this from one side to the other needs two threads (ours; no source). */
export const MOST_GROWTH = 4;
const ROUNDING = 1e-9;
const MOST_REPEATS = 10_000;

/** The fewest repeats, more than `given`, that work; what works with some works with more. */
function fewest(given: number, works: (repeats: number) => boolean): number | null {
  if (!works(MOST_REPEATS)) return null;
  let [fails, does] = [given, MOST_REPEATS];
  while (does - fails > 1) {
    const middle = (fails + does) >> 1;
    if (works(middle)) does = middle;
    else fails = middle;
  }
  return does;
}

/** Pins of the strip that bending could bring too near each other. */
function nearPairs(strip: readonly Pin[]): [Pin, Pin][] {
  const index = new PointIndex(strip);
  return strip.flatMap((pin, p) =>
    index
      .within(pin, REACH)
      .filter((q) => q > p)
      .map((q): [Pin, Pin] => [pin, strip[q]!]),
  );
}

const REACH = LEAST_SPACING * MOST_GROWTH;
