import { LEAST_MARK_CONTRAST } from '#base/colour/contrast.ts';
import { blueFilm, type Film, greyFilm } from '#base/colour/film.ts';
import { LEAST_TINT_DIFFERENCE } from '#base/colour/visible.ts';

/** The thresholds of all rules. Sizes in mm; a share of spacing is a share of the distance between neighbouring pins. */
export interface LookOptions {
  /** Diameter of a hole where the pattern does not say, mm. */
  readonly hole: number;
  /** Thickness of the card where the pattern does not say, mm. */
  readonly cardThickness: number;
  /** Least card left standing between two holes: the larger of `share` of the card's thickness and `floor` (mm). */
  readonly leastWeb: LeastWeb;
  /** Two pins nearer than this share of the hole are one pin marked twice. */
  readonly doubledWithin: number;
  /** A pin found with less confidence than this is doubtful. */
  readonly surePin: number;
  /** A missing pin with less confidence than this is only a note. */
  readonly sureGap: number;
  /** How far one step along an even run may differ from the others, share of its spacing. */
  readonly unevenStep: number;
  /** How far a pin may stand off a straight footside, share of its spacing. */
  readonly footsideBow: number;
  /** How far the next repeat may miss its place, share of spacing. */
  readonly repeatMiss: number;
  /** How far from a mark's end to look for the pin it probably meant, share of spacing. */
  readonly markReach: number;
  /** The films to look through; empty where none will be used. */
  readonly films: readonly Film[];
  /** The ink that lines and signs are printed in, '#rrggbb'. */
  readonly lineInk: string;
  /** Least contrast ratio of a line against what it lies on, seen through film. */
  readonly leastLineContrast: number;
  /** Least difference (CIEDE2000) of a tint from the paper, seen through film. */
  readonly leastTintDifference: number;
}

export interface LeastWeb {
  readonly share: number;
  readonly floor: number;
}

/**
 * For pricking by hand: a needle parts the card rather than taking it away, so that less may stand between two holes
 * than a machine needs. Common practice, no source.
 */
export const handWeb: LeastWeb = { share: 0.5, floor: 0.25 };

/**
 * For a laser or a drill: the thickness of the material, and never under 0.5 mm, below which cuts may burn through;
 * a cutting shop's published advice (cutlasercut.com, design guidelines).
 */
export const machineWeb: LeastWeb = { share: 1, floor: 0.5 };

/** Every figure without a source beside it is common practice, no source, and meant to be changed. */
export const defaultLookOptions: LookOptions = {
  hole: 0.5,
  cardThickness: 0.4,
  leastWeb: handWeb,
  doubledWithin: 0.5,
  surePin: 0.5,
  sureGap: 0.5,
  unevenStep: 0.15,
  footsideBow: 0.1,
  repeatMiss: 0.1,
  markReach: 0.4,
  films: [blueFilm, greyFilm],
  lineInk: '#000000',
  // WCAG 2.2, success criterion 1.4.11.
  leastLineContrast: LEAST_MARK_CONTRAST,
  leastTintDifference: LEAST_TINT_DIFFERENCE,
};
