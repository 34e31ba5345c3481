import type { GreyPicture } from '#base/picture/grey.ts';
import { inverted } from '#base/picture/inverted.ts';
import { grown, shrink } from '#base/picture/shrink.ts';
import { type Match, type MatchTried, match } from './match.ts';
import type { Target } from './seek.ts';
import { diameterOf, findSpots, type Spot, type Spots } from './spots.ts';

/** In which order a picture is read: as it ought to be first, and smaller where holes are very wide or very grainy. */
export const WAYS = [
  { holes: 'light', factor: 1 },
  { holes: 'dark', factor: 1 },
  { holes: 'light', factor: 2 },
  { holes: 'dark', factor: 2 },
] as const;

/** One reading of the picture, and how it went. */
export interface Attempt {
  readonly holes: 'light' | 'dark';
  readonly factor: number;
  readonly found: Spots;
  readonly count: number;
  readonly match: Match | null;
  readonly tried: MatchTried;
  /** What a match left over, where that was too much to believe it. */
  poor?: { readonly missing: number; readonly extra: number };
}

export function attempt(
  picture: GreyPicture,
  target: Target,
  holes: 'light' | 'dark',
  factor: number,
): Attempt {
  const smaller = shrink(picture, factor);
  const small = findSpots(holes === 'light' ? inverted(smaller) : smaller);
  const found = {
    ...small,
    diameter: small.diameter * factor,
    spots: small.spots.map((spot) => enlarged(spot, factor)),
  };
  const usual = found.spots.filter((spot) => {
    const ratio = diameterOf(spot) / found.diameter;
    return ratio > 0.6 && ratio < 2;
  });
  const places = usual.slice(0, MOST_SPOTS).map(({ column, row }) => ({ x: column, y: row }));
  const result = match(places, target, picture);
  return { holes, factor, found, count: usual.length, ...result };
}

/** No card has so many holes; a picture that has so many spots is of something else. */
const MOST_SPOTS = 40_000;

function enlarged(spot: Spot, factor: number): Spot {
  if (factor === 1) return spot;
  const square = factor * factor;
  return {
    column: grown(spot.column, factor),
    row: grown(spot.row, factor),
    area: spot.area * square,
    xx: spot.xx * square,
    xy: spot.xy * square,
    yy: spot.yy * square,
    amplitude: spot.amplitude,
    softness: spot.softness,
  };
}
