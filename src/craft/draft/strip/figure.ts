import type { DraftTrouble } from '../trouble.ts';

/** Trouble with a whole number of the recipe. */
export const countTrouble = (
  figure: string,
  given: number,
  why: DraftTrouble['why'],
  limits: Pick<DraftTrouble, 'least' | 'most' | 'nearest'>,
): DraftTrouble => ({ kind: 'recipe-figure', figure, given, unit: 'count', why, ...limits });

/** Of some figures the nearest to the given one, the smaller of two; undefined where there is none. */
export const nearestOf = (given: number, figures: readonly number[]): number | undefined =>
  figures.length === 0
    ? undefined
    : figures.reduce((best, one) => (Math.abs(one - given) < Math.abs(best - given) ? one : best));
