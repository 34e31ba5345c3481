import { PointIndex } from '#base/geometry/point-index.ts';
import type { Pin } from '#pattern/pattern.ts';
import type { RingRecipe } from '#pattern/recipe/ring.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';
import { type Bend, bendOf } from './bend.ts';

/** How a strip goes round: `whole` is how many footside spacings would fill the circle. */
export interface Turn {
  readonly spacings: number;
  readonly whole: number;
}

/** Whole spacings must fill the circle, so that parts can be joined to a ring: the arc is taken to the nearest such. */
export function turnOf({ length, arc }: RingRecipe, repeats: number): Turn {
  const spacings = length * repeats;
  return { spacings, whole: Math.round((spacings * 360) / arc) };
}

export function repeatsBend(recipe: RingRecipe, repeats: number = recipe.repeats): Bend {
  const { spacings, whole } = turnOf(recipe, repeats);
  const { spacing, foot } = recipe;
  return bendOf({ spacing, spacings, arc: (2 * Math.PI * spacings) / whole, foot });
}

/**
 * What stands in the way of bending a strip: too narrow an opening left in the ring, one side opened too far against
 * the other, or pins of the narrow side too near each other. The last two are cured by more repeats: the trouble names
 * the fewest that work.
 */
export function bendTrouble(recipe: RingRecipe, strip: readonly Pin[]): DraftTrouble | null {
  const { repeats } = recipe;
  const [isOpen, standsClear] = [openness(recipe, strip), clearance(recipe, strip)];
  const trouble = (why: DraftTrouble['why']): DraftTrouble => {
    const nearest = fewest(repeats, (more) => isOpen(more) && standsClear(more));
    const found = nearest === null ? {} : { least: nearest, nearest };
    return { kind: 'recipe-figure', figure: 'repeats', given: repeats, unit: 'count', why, ...found };
  };
  if (!isOpen(repeats)) return trouble('bend-too-tight');
  if (!standsClear(repeats)) return trouble('pins-too-close');
  return openingTrouble(recipe);
}

/** Ground that is opened farther than this from one side to the other needs two threads (ours; no source). */
export const MOST_GROWTH = 4;

function openness(recipe: RingRecipe, strip: readonly Pin[]): (repeats: number) => boolean {
  const widest = strip.reduce((most, { x }) => Math.max(most, x), 0);
  const narrowest = strip.reduce((least, { x }) => Math.min(least, x), 0);
  return (repeats) => Math.exp(repeatsBend(recipe, repeats).rate * (widest - narrowest)) <= MOST_GROWTH;
}

function clearance(recipe: RingRecipe, strip: readonly Pin[]): (repeats: number) => boolean {
  const pairs = nearPairs(strip);
  return (repeats) => {
    const { place } = repeatsBend(recipe, repeats);
    return pairs.every(([p, q]) => {
      const [a, b] = [place(p), place(q)];
      return Math.hypot(a.x - b.x, a.y - b.y) >= LEAST_SPACING - ROUNDING;
    });
  };
}

const ROUNDING = 1e-9;

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

/** A chord is at the least 2 / pi of its arc. */
const REACH = (LEAST_SPACING * MOST_GROWTH * Math.PI) / 2;

/** A ring that is open by less than this looks like one with pins left out (ours; no source). */
const LEAST_OPENING = 3;

function openingTrouble(recipe: RingRecipe): DraftTrouble | null {
  const { spacings, whole } = turnOf(recipe, recipe.repeats);
  const { arc } = recipe;
  if (arc === 360 || whole - spacings >= LEAST_OPENING) return null;
  const most = Math.floor((36_000 * spacings) / (spacings + LEAST_OPENING)) / 100;
  const nearest = 360 - arc < arc - most ? 360 : most;
  return {
    kind: 'recipe-figure',
    figure: 'arc',
    given: arc,
    unit: 'degrees',
    why: 'does-not-fit',
    most,
    nearest,
  };
}

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
