import { pointsToMm } from '#base/units/length.ts';
import type { Colour } from '../drawing/mark.ts';
import type { Lettering } from './lettering.ts';

/** How all sheets look. Letters are never under 9 points, lines never under 0.15 mm. */
export const ink: Colour = '#000000';
export const quiet: Colour = '#4f4f4f';
export const accent: Colour = '#8a2f4b';
export const hairline: Colour = '#9a9a9a';
export const wash: Colour = '#f6f0ea';
export const white: Colour = '#ffffff';

export const LEAST_LETTER = pointsToMm(9);
export const LEAST_LINE = 0.15;

const letters = (points: number, weight: Lettering['weight'], colour: Colour): Lettering => ({
  size: pointsToMm(points),
  weight,
  colour,
});

export const nameLetters = letters(15, 'bold', ink);
export const titleLetters = letters(11, 'regular', accent);
export const headingLetters = letters(13, 'bold', accent);
export const bodyLetters = letters(11, 'regular', ink);
export const bodyBold = letters(11, 'bold', ink);
export const smallLetters = letters(9, 'regular', quiet);
export const smallBold = letters(9, 'bold', ink);
export const guideLetters = letters(9, 'regular', accent);

/** Distance from baseline to baseline. */
export const lineStep = ({ size }: Lettering): number => size * 1.32;
