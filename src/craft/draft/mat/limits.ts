import { PointIndex } from '#base/geometry/point-index.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { MatRecipe } from '#pattern/recipe/mat.ts';
import { MOST_GROWTH } from '../ring/limits.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';
import type { Round } from './rounds.ts';

/** A round whose repeats do not go into its pins. */
export function repeatTrouble({ figure, pins, strip: { length } }: Round): DraftTrouble | null {
  if (pins % length === 0) return null;
  const parts = Array.from({ length: Math.min(pins, MOST_LENGTH) }, (_, k) => k + 1).filter(
    (k) => pins % k === 0,
  );
  const nearest = parts.reduce((best, k) => (Math.abs(k - length) < Math.abs(best - length) ? k : best));
  const why = 'repeat-does-not-divide';
  return { kind: 'recipe-figure', figure: `${figure}.length`, given: length, unit: 'count', why, nearest };
}

const MOST_LENGTH = 200;

/** A round whose outer edge would be opened too far against its inner one: more sectors cure it. */
export function growthTrouble(
  recipe: MatRecipe,
  rounds: readonly Round[],
  strips: readonly Pattern[],
): DraftTrouble | null {
  const { sectors } = recipe;
  const least = rounds.reduce((most, { bend, pins, strip }, k) => {
    const widest = strips[k]!.pins.reduce((farthest, { x }) => Math.max(farthest, x), 0);
    const growth = bend.rate * widest;
    // The logarithm of growth goes with one by the number of pins.
    return growth <= Math.log(MOST_GROWTH)
      ? most
      : Math.max(most, (sectors * growth) / Math.log(MOST_GROWTH), sectors + 1, pins / strip.length);
  }, 0);
  if (least === 0) return null;
  const divides = (count: number): boolean =>
    rounds.every(({ pins, strip }) => ((pins / sectors) * count) % strip.length === 0) &&
    (recipe.centre.kind !== 'ring' || count % recipe.centre.pins === 0);
  let nearest = Math.ceil(least);
  while (nearest <= MOST_SECTORS && !divides(nearest)) nearest++;
  const found = nearest <= MOST_SECTORS ? { least: nearest, nearest } : {};
  return {
    kind: 'recipe-figure',
    figure: 'sectors',
    given: sectors,
    unit: 'count',
    why: 'bend-too-tight',
    ...found,
  };
}

const MOST_SECTORS = 720;

/** Pins that came too near each other; a larger spacing cures it. */
export function closeTrouble({ spacing }: MatRecipe, pins: Pattern['pins']): DraftTrouble | null {
  const index = new PointIndex(pins);
  let apart = LEAST_SPACING;
  for (let pin = 0; pin < pins.length; pin++) apart = index.nearestTo(pin, apart);
  return apart >= LEAST_SPACING - ROUNDING ? null : spacingTrouble(spacing, LEAST_SPACING / apart);
}

const ROUNDING = 1e-9;

/** Trouble that is gone once the spacing is `factor` times as large. */
export function spacingTrouble(spacing: number, factor: number): DraftTrouble {
  const least = Math.ceil(spacing * factor * 1000) / 1000;
  return {
    kind: 'recipe-figure',
    figure: 'spacing',
    given: spacing,
    unit: 'mm',
    why: 'pins-too-close',
    least,
    nearest: least,
  };
}

/** Trouble of a round's strip, in the words of the mat's recipe. */
export function ofMat(recipe: MatRecipe, { figure, strip }: Round, trouble: DraftTrouble): DraftTrouble {
  if (trouble.figure === 'spacing')
    return spacingTrouble(recipe.spacing, (trouble.nearest ?? strip.spacing) / strip.spacing);
  if (trouble.figure !== 'repeats') return { ...trouble, figure: `${figure}.${trouble.figure}` };
  const most = Math.floor((recipe.sectors * (trouble.most ?? strip.repeats)) / strip.repeats);
  return {
    kind: 'recipe-figure',
    figure: 'sectors',
    given: recipe.sectors,
    unit: 'count',
    why: trouble.why,
    most,
    nearest: most,
  };
}
