import type { Camera } from '#base/fit/camera.ts';
import { boxOf } from '#base/geometry/box.ts';
import { NearestGrid } from '#base/geometry/nearest-grid.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { type Random, seededRandom } from '#base/random.ts';
import { grow, type Pair, type PictureSize, settle } from './grow.ts';
import { around, type Neighbourhood, neighbourhoodOf } from './neighbours.ts';
import { otherWays, type Way } from './other-ways.ts';
import { CROWD, type Guess, guessesAt, NEIGHBOURS, type Target } from './seek.ts';

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
  const crowds = pins.map((_, k) => around(neighbourhood, k, CROWD));
  return {
    pins: neighbourhood,
    grid: new NearestGrid(pins, 0.5 * neighbourhood.spacing),
    few: crowds.map((crowd) => crowd.slice(0, NEIGHBOURS)),
    crowd: Float64Array.from(crowds, (crowd, k) => distance(pins[k]!, pins[crowd.at(-1)!]!)),
  };
}

/** Places where the search starts, at most, and guesses that are carried on from them. */
const SEEDS = 14;
const GROWN_AT_EACH = 12;
/** More layings than these at one start mean that its surroundings do not tell places apart. */
const FEW_LAYINGS = 300;
/** Guesses of one start that are kept, to look for other ways of laying the pattern. */
const KEPT_AT_EACH = 120;
/** Starts that are looked at for other ways even after a match was found. */
const LEAST_STARTS = 4;
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
  if (places.length < 6 || target.pins.points.length < 6) {
    return { match: null, tried: { guesses: 0, explained: 0 } };
  }
  const spots = neighbourhoodOf(places);
  const { found, guesses, tried } = search(spots, target, picture);
  return { match: found && best(found, guesses, spots, target, picture), tried };
}

type Found = Omit<Match, 'otherWays'>;

function search(
  spots: Neighbourhood,
  target: Target,
  picture: PictureSize,
): { readonly found: Found | null; readonly guesses: readonly Guess[]; readonly tried: MatchTried } {
  const all: Guess[] = [];
  const tried = { guesses: 0, explained: 0 };
  let found: Found | null = null;
  let [worth, starts] = [0, 0];
  const seeds = seedsIn(spots, seededRandom(1)).map((seed) => ({ seed, most: FEW_LAYINGS }));
  // a start inside a net is dear and tells little: such starts wait until all others have been tried
  for (const { seed, most } of seeds) {
    if (worth > ENOUGH && (starts >= LEAST_STARTS || most > FEW_LAYINGS)) break;
    const guesses = guessesAt(spots, seed, target, most);
    if (guesses === null) {
      if (most === FEW_LAYINGS) seeds.push({ seed, most: Number.POSITIVE_INFINITY });
      continue;
    }
    starts++;
    all.push(...guesses.slice(0, KEPT_AT_EACH));
    if (worth > ENOUGH) continue;
    const worthy = guesses.filter(({ score }) => score > 0.95 * guesses[0]!.score).slice(0, GROWN_AT_EACH);
    for (const guess of worthy) {
      const pairs = grow(guess, spots, target);
      tried.guesses++;
      tried.explained = Math.max(tried.explained, (pairs ?? guess.pairs).length);
      if (pairs === null || pairs.length < 6) continue;
      if (found !== null && pairs.length < 0.8 * found.pairs.length) continue;
      const fit = settle(pairs, spots, target, picture);
      if (fit === null) continue;
      const own = (2 * fit.pairs.length) / (spots.points.length + target.pins.points.length);
      if (own > worth) [found, worth] = [fit, own];
      if (own > 0.97) break;
    }
  }
  return { found, guesses: all, tried };
}

/** The match itself, or another way of laying the pattern on the same holes where that leaves less unexplained. */
function best(
  found: Found,
  guesses: readonly Guess[],
  spots: Neighbourhood,
  target: Target,
  picture: PictureSize,
): Match {
  let chosen = found;
  for (let round = 0; ; round++) {
    const ways = otherWays(chosen.camera, guesses, spots, target);
    const better =
      ways[0] && ways[0].cost < -0.5 && round < 3 ? settle(ways[0].pairs, spots, target, picture) : null;
    if (better === null) return { ...chosen, otherWays: ways };
    chosen = better;
  }
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
    return near.length === 0 ? 0 : (0.3 + single.length) * (0.5 + 0.5 * random());
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
