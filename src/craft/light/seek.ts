import { affineFit } from '#base/fit/affine.ts';
import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import type { NearestGrid } from '#base/geometry/nearest-grid.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { around, type Neighbourhood } from './neighbours.ts';

/** A guess how the spots round one of them lie on the pattern. */
export interface Guess {
  /** Carries places in the picture to the pattern; true near the seed only. */
  readonly map: Affine;
  /** Spots near the seed that it carries on to pins, and the pins, pair by pair. */
  readonly pairs: readonly (readonly [spot: number, pin: number])[];
  /** Share of the spots near the seed that it explains, less the share of pins there that no spot explains. */
  readonly score: number;
}

/** The pattern made ready to be asked often. */
export interface Target {
  readonly pins: Neighbourhood;
  readonly grid: NearestGrid;
  /** The few nearest pins of each pin. */
  readonly few: readonly (readonly number[])[];
  /** How far from each pin its `CROWD` nearest reach: further at an edge and furthest in a corner. */
  readonly crowd: Float64Array;
}

/** Neighbours of a pin that may be those of the seed. A fault may hide one, so that there are some to spare. */
export const NEIGHBOURS = 9;
/** So many neighbours tell an edge or a corner from the midst, by how far they reach. */
export const CROWD = 24;
/** Edges and corners are told apart while these reaches differ by more than this factor: on an edge it is root 2. */
const ALIKE = 1.3;
/** Neighbours of the seed by which a guess is judged: at first, and in full. */
const FIRST = 9;
const SECOND = 24;
const FULL = 40;
/** A guess may make nothing this many times longer one way than the other: a tilt of nearly 45 degrees. */
const MOST_STRETCH = 1.4;
/** Nor may the scale be so many times off the one that the distances between neighbours tell. */
const MOST_SCALE = 1.9;
/** How near a spot must come to a pin to be explained, in distances between neighbouring pins. */
export const NEAR = 0.3;

/**
 * All good guesses how the surroundings of one spot fit the pattern, the best first: the spot and two of its neighbours
 * are laid on every pin and two of its own, turned over or not, and each laying is judged by the spots further out.
 * Null where more than `most` layings look good, as they do inside a net.
 */
export function guessesAt(spots: Neighbourhood, seed: number, target: Target, most: number): Guess[] | null {
  const near = around(spots, seed, FULL);
  const layings = bases(spots, seed, near).flatMap(([u, v]) => layingsOf(spots, seed, near, u, v, target));
  if (layings.length > most) return null;
  const guesses = layings.flatMap(
    ({ map, tolerance }) => judged(map, spots, seed, near, target, tolerance) ?? [],
  );
  return distinct(guesses.sort((p, q) => q.score - p.score));
}

interface Laying {
  readonly map: Affine;
  readonly tolerance: number;
}

function layingsOf(
  spots: Neighbourhood,
  seed: number,
  near: readonly number[],
  u: Point,
  v: Point,
  { pins, grid, few, crowd }: Target,
): Laying[] {
  const from = spots.points[seed]!;
  const usual = pins.spacing / spots.spacing;
  const cross = u.x * v.y - u.y * v.x;
  const [lengthU, lengthV] = [Math.hypot(u.x, u.y), Math.hypot(v.x, v.y)];
  const reach = distance(from, spots.points[near[Math.min(CROWD, near.length) - 1]!]!);
  const layings: Laying[] = [];
  for (let pin = 0; pin < pins.points.length; pin++) {
    const at = pins.points[pin]!;
    for (const one of few[pin]!) {
      const [ax, ay] = [pins.points[one]!.x - at.x, pins.points[one]!.y - at.y];
      const scaleU = Math.hypot(ax, ay) / lengthU;
      if (scaleU > MOST_SCALE * usual || scaleU * MOST_SCALE < usual) continue;
      for (const other of few[pin]!) {
        const [bx, by] = [pins.points[other]!.x - at.x, pins.points[other]!.y - at.y];
        const stretch = Math.hypot(bx, by) / lengthV / scaleU;
        if (one === other || stretch > MOST_STRETCH || stretch * MOST_STRETCH < 1) continue;
        const a = (ax * v.y - bx * u.y) / cross;
        const c = (bx * u.x - ax * v.x) / cross;
        const b = (ay * v.y - by * u.y) / cross;
        const d = (by * u.x - ay * v.x) / cross;
        // with singular values s and t: the first is (s^2 + t^2) / 2 and the second s t
        const size = (a * a + b * b + c * c + d * d) / 2;
        if (!(size <= (Math.abs(a * d - b * c) * (MOST_STRETCH + 1 / MOST_STRETCH)) / 2)) continue;
        const crowded = (reach * Math.sqrt(Math.abs(a * d - b * c))) / crowd[pin]!;
        if (crowded > ALIKE || crowded * ALIKE < 1) continue;
        const map = { a, b, c, d, e: at.x - a * from.x - c * from.y, f: at.y - b * from.x - d * from.y };
        const tolerance = NEAR * Math.max(pins.nearest[pin]!, 0.6 * pins.spacing);
        if (!fits(map, spots, near, FIRST, grid, tolerance)) continue;
        if (fits(map, spots, near, SECOND, grid, 1.3 * tolerance)) layings.push({ map, tolerance });
      }
    }
  }
  return layings;
}

/** Two steps from the seed to neighbours, well apart in direction: two such pairs, for one may hold a fault. */
function bases(spots: Neighbourhood, seed: number, near: readonly number[]): [Point, Point][] {
  const at = spots.points[seed]!;
  const steps = near.slice(0, 6).map((k) => ({ x: spots.points[k]!.x - at.x, y: spots.points[k]!.y - at.y }));
  const found: [Point, Point][] = [];
  for (let j = 1; j < steps.length; j++) {
    for (let i = 0; i < j && found.length < 2; i++) {
      const [u, v] = [steps[i]!, steps[j]!];
      const sine = Math.abs(u.x * v.y - u.y * v.x) / (Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y));
      if (sine > 0.6) found.push([u, v]);
    }
  }
  return found;
}

function fits(
  map: Affine,
  spots: Neighbourhood,
  near: readonly number[],
  most: number,
  grid: NearestGrid,
  tolerance: number,
): boolean {
  let misses = 0;
  const count = Math.min(most, near.length);
  for (let k = 0; k < count; k++) {
    const { x, y } = spots.points[near[k]!]!;
    const hit = grid.nearest(map.a * x + map.c * y + map.e, map.b * x + map.d * y + map.f, tolerance);
    if (hit < 0 && ++misses > 0.25 * count) return false;
  }
  return true;
}

function judged(
  first: Affine,
  spots: Neighbourhood,
  seed: number,
  near: readonly number[],
  { pins, grid }: Target,
  tolerance: number,
): Guess | null {
  let map = first;
  let pairs: [number, number][] = [];
  for (const count of [16, FULL]) {
    pairs = [];
    const taken = new Set<number>();
    for (const spot of [seed, ...near.slice(0, count)]) {
      const { x, y } = applyAffine(map, spots.points[spot]!);
      const pin = grid.nearest(x, y, tolerance);
      if (pin < 0 || taken.has(pin)) continue;
      taken.add(pin);
      pairs.push([spot, pin]);
    }
    if (pairs.length < 0.6 * Math.min(count, near.length)) return null;
    const better = affineFit(
      pairs.map(([spot]) => spots.points[spot]!),
      pairs.map(([, pin]) => pins.points[pin]!),
    );
    if (better === null) return null;
    map = better;
  }
  const far = spots.points[near.at(-1)!]!;
  const middle = spots.points[seed]!;
  const reach =
    Math.hypot(far.x - middle.x, far.y - middle.y) * Math.sqrt(Math.abs(map.a * map.d - map.b * map.c));
  const there = pins.index.within(applyAffine(map, middle), reach).length;
  const score = (2 * pairs.length) / (near.length + 1 + Math.max(there, pairs.length));
  return { map, pairs, score };
}

/** Guesses that lay the seed on the same pin the same way round are one. */
function distinct(guesses: readonly Guess[]): Guess[] {
  const seen = new Set<string>();
  return guesses.filter(({ map, pairs }) => {
    const turn = Math.round(Math.atan2(map.b - map.c, map.a + map.d) * 8);
    const key = `${pairs[0]![0]} ${pairs[0]![1]} ${pairs[1]?.[1]} ${map.a * map.d > map.b * map.c} ${turn}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
