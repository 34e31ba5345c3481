import { type Camera, fromPixel } from '#base/fit/camera.ts';
import { boxOf } from '#base/geometry/box.ts';
import { NearestGrid } from '#base/geometry/nearest-grid.ts';
import type { Point } from '#base/geometry/point.ts';
import { type Random, seededRandom } from '#base/random.ts';
import { grow, type Pair, type PictureSize, pixelOf, settle } from './grow.ts';
import { around, type Neighbourhood, neighbourhoodOf } from './neighbours.ts';
import { otherWays, type Way } from './other-ways.ts';
import { type Guess, guessesAt, NEIGHBOURS, type Target } from './seek.ts';

/** How the picture lies on the pattern. */
export interface Match {
  readonly camera: Camera;
  /** Standard deviation per coordinate of sound holes about their pins, pixels. */
  readonly sigma: number;
  readonly pairs: readonly Pair[];
  /** Other ways of laying the pattern on the same holes that are as good, or nearly. */
  readonly otherWays: readonly Way[];
}

export interface MatchTried {
  /** Guesses that were carried over the whole picture. */
  readonly guesses: number;
  /** The most pins that any of them explained. */
  readonly explained: number;
}

/** Makes a pattern ready for matching. */
export function targetOf(pins: readonly Point[]): Target {
  const neighbourhood = neighbourhoodOf(pins);
  return {
    pins: neighbourhood,
    grid: new NearestGrid(pins, 0.5 * neighbourhood.spacing),
    few: pins.map((_, k) => around(neighbourhood, k, NEIGHBOURS)),
  };
}

/** Places where the search starts, at most, and guesses that are carried on from them. */
const SEEDS = 14;
const GROWN_AT_EACH = 12;
/** More layings than these at one start mean that its surroundings do not tell places apart. */
const FEW_LAYINGS = 300;
/** A match that explains this share of pins and of spots needs no further search. */
const ENOUGH = 0.85;

/**
 * Finds how a picture's spots lie on a pattern without knowing anything beforehand: turn, side, scale and tilt. The
 * search starts at a few spots spread over the picture; a guess that holds round one of them is carried outward.
 */
export function match(
  places: readonly Point[],
  target: Target,
  picture: PictureSize,
): { readonly match: Match | null; readonly tried: MatchTried } {
  let tried: MatchTried = { guesses: 0, explained: 0 };
  if (places.length < 6 || target.pins.points.length < 6) return { match: null, tried };
  const spots = neighbourhoodOf(places);
  const all: Guess[] = [];
  let best: (Omit<Match, 'otherWays'> & { readonly worth: number }) | null = null;
  const seeds = seedsIn(spots, seededRandom(1)).map((seed) => ({ seed, most: FEW_LAYINGS }));
  // a start inside a net is dear and tells little: such starts wait until all others have been tried
  for (const { seed, most } of seeds) {
    const guesses = guessesAt(spots, seed, target, most);
    if (guesses === null) {
      if (most === FEW_LAYINGS) seeds.push({ seed, most: Number.POSITIVE_INFINITY });
      continue;
    }
    all.push(...guesses.slice(0, 120));
    const worthy = guesses.filter(({ score }) => score > 0.95 * guesses[0]!.score).slice(0, GROWN_AT_EACH);
    for (const guess of worthy) {
      const pairs = grow(guess, spots, target);
      tried = {
        guesses: tried.guesses + 1,
        explained: Math.max(tried.explained, (pairs ?? guess.pairs).length),
      };
      if (pairs === null || pairs.length < 6) continue;
      if (best !== null && pairs.length < 0.8 * best.pairs.length) continue;
      const fit = settle(pairs, spots, target, picture);
      if (fit === null) continue;
      const worth = (2 * fit.pairs.length) / (places.length + target.pins.points.length);
      if (best === null || worth > best.worth) best = { ...fit, worth };
      if (worth > 0.97) break;
    }
    if (best !== null && best.worth > ENOUGH) break;
  }
  if (best === null) return { match: null, tried };
  const ways = otherWays(best.camera, all, spots, target);
  const first = ways[0];
  let chosen: Omit<Match, 'otherWays'> = best;
  if (first !== undefined && first.cost < 0) {
    const again = settle(first.pairs, spots, target, picture);
    if (again !== null) chosen = again;
  }
  return { match: { ...chosen, otherWays: ways }, tried };
}

/**
 * Spots to start from, spread over the picture. What lies round them should tell places apart, as the inside of a net
 * does not: the more neighbours have no counterpart on the other side of the spot, the better.
 */
function seedsIn(spots: Neighbourhood, random: Random): number[] {
  const grid = new NearestGrid(spots.points, spots.spacing);
  const worth = spots.points.map(({ x, y }, k) => {
    const near = around(spots, k, 8);
    const single = near.filter((other) => {
      const place = spots.points[other]!;
      return grid.nearest(2 * x - place.x, 2 * y - place.y, 0.25 * spots.spacing) < 0;
    });
    // where all neighbours lie far off or on one side only, the spot is at the rim or no hole at all
    return near.length === 0 ? 0 : (0.3 + Math.min(single.length, 5)) * (0.5 + 0.5 * random());
  });
  const box = boxOf(spots.points);
  const apart = 0.3 * Math.hypot(box.right - box.left, box.bottom - box.top);
  const seeds: number[] = [];
  while (seeds.length < Math.min(SEEDS, spots.points.length)) {
    let chosen = 0;
    let most = -1;
    for (const [k, value] of worth.entries()) {
      if (value <= most) continue;
      most = value;
      chosen = k;
    }
    seeds.push(chosen);
    const at = spots.points[chosen]!;
    spots.points.forEach(({ x, y }, k) => {
      worth[k]! *= k === chosen ? 0 : Math.min(1, 0.05 + Math.hypot(x - at.x, y - at.y) / apart);
    });
  }
  return seeds;
}

export const readerOf = (camera: Camera): ((place: Point) => Point) => {
  const read = fromPixel(camera);
  return (place) => read(pixelOf(place));
};
