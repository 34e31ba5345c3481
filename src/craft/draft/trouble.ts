/**
 * Why a recipe cannot be met: which figure stands in the way, its limits, and the nearest that works.
 * `figure` is its path in the recipe, for example 'headside.pins'.
 */
export interface DraftTrouble {
  readonly kind: 'recipe-figure';
  readonly figure: string;
  readonly given: number;
  readonly unit: 'mm' | 'degrees' | 'count';
  readonly least?: number;
  readonly most?: number;
  /** The nearest figure that works, where there is one. */
  readonly nearest?: number;
  readonly why: DraftWhy;
}

/** What the figure runs into; the jobs put each into words. */
export type DraftWhy =
  | 'pins-too-close'
  | 'pins-too-far'
  | 'too-many-pins'
  | 'too-large'
  | 'too-few-pins'
  | 'repeat-does-not-divide'
  | 'corner-does-not-divide'
  | 'too-narrow'
  | 'does-not-fit'
  | 'in-the-way'
  | 'off-the-lattice'
  | 'bend-too-tight'
  | 'crosses-too-tightly'
  | 'crosses-itself'
  | 'leaves-no-ground'
  | 'motifs-overlap';

/**
 * Pins nearer than this are not drafted, mm: the usual hole of 0.5 mm and 0.25 mm of card that has to stand beside it,
 * so that two neighbours do not tear into one (common practice, no source).
 */
export const LEAST_SPACING = 0.75;

/** More pins than a pattern file takes are not drafted. */
export const MOST_PINS = 1_000_000;
