import { PointIndex } from '#base/geometry/point-index.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { MatRecipe } from '#pattern/recipe/mat.ts';
import { MOST_GROWTH } from '../ring/limits.ts';
import { draftStrip } from '../strip/strip.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';
import { type Round, roundsOfMat } from './rounds.ts';

/** A round whose repeats do not go into its pins. */
export function repeatTrouble({ figure, pins, strip }: Round): DraftTrouble | null {
  if (pins % strip.length === 0) return null;
  return lengthTrouble({ figure, pins, strip }, 'repeat-does-not-divide');
}

const MOST_LENGTH = 200;

/**
 * Ground that would be too open in one place against the finest of the mat: with more sectors it grows less, with
 * fewer it is less fine beyond doubled bands.
 */
export function growthTrouble(
  recipe: MatRecipe,
  rounds: readonly Round[],
  strips: readonly Pattern[],
): DraftTrouble | null {
  const { sectors } = recipe;
  const spans = rounds.map(
    ({ strip }, k) => strips[k]!.pins.reduce((most, { x }) => Math.max(most, x), 0) / strip.spacing,
  );
  const isEven = (count: number): boolean => {
    const others = roundsOfMat({ ...recipe, sectors: count });
    const inner = others.map(({ strip }) => strip.spacing);
    const outer = others.map(
      ({ bend, strip }, k) => strip.spacing * Math.exp(bend.rate * strip.spacing * spans[k]!),
    );
    return Math.max(...outer) <= MOST_GROWTH * Math.min(...inner);
  };
  if (isEven(sectors)) return null;
  const divides = (count: number): boolean =>
    rounds.every(({ pins, strip }) => ((pins / sectors) * count) % strip.length === 0) &&
    (recipe.centre.kind !== 'ring' || count % recipe.centre.pins === 0);
  const nearest = Array.from({ length: MOST_SECTORS - LEAST_SECTORS + 1 }, (_, k) => LEAST_SECTORS + k)
    .toSorted((one, other) => Math.abs(one - sectors) - Math.abs(other - sectors))
    .find((count) => divides(count) && isEven(count));
  const found = nearest === undefined ? {} : { nearest };
  return {
    kind: 'recipe-figure',
    figure: 'sectors',
    given: sectors,
    unit: 'count',
    why: 'bend-too-tight',
    ...found,
  };
}

const LEAST_SECTORS = 6;
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

/** A length has to suit the ground and the edge, and whole repeats of it have to go round. */
function lengthTrouble(
  { figure, pins, strip }: Omit<Round, 'prefix' | 'bend'>,
  why: DraftTrouble['why'],
): DraftTrouble {
  const { length } = strip;
  const suits = (part: number): boolean => {
    const drafted = draftStrip({ ...strip, length: part, repeats: 1 });
    return drafted.ok || drafted.trouble.figure !== 'length';
  };
  const nearest = partsOf(pins)
    .toSorted((one, other) => Math.abs(one - length) - Math.abs(other - length))
    .find(suits);
  const found = nearest === undefined ? {} : { nearest };
  return { kind: 'recipe-figure', figure: `${figure}.length`, given: length, unit: 'count', why, ...found };
}

/** Lengths of which whole repeats go into so many pins. */
const partsOf = (pins: number): number[] =>
  Array.from({ length: Math.min(pins, MOST_LENGTH) }, (_, k) => k + 1).filter((k) => pins % k === 0);

/** Trouble of a round's strip, in the words of the mat's recipe. */
export function ofMat(
  recipe: MatRecipe,
  { figure, pins, strip }: Round,
  trouble: DraftTrouble,
): DraftTrouble {
  if (trouble.figure === 'spacing')
    return spacingTrouble(recipe.spacing, (trouble.nearest ?? strip.spacing) / strip.spacing);
  if (trouble.figure === 'length') return lengthTrouble({ figure, pins, strip }, trouble.why);
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
