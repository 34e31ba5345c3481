import { type Camera, fromPixel } from '#base/fit/camera.ts';
import { type Affine, applyAffine, identity } from '#base/geometry/affine.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { type Pair, paired, pixelOf } from './grow.ts';
import type { Neighbourhood } from './neighbours.ts';
import type { Guess, Target } from './seek.ts';

/** Another way of laying the pattern on holes: turned, turned over or shifted against the one that was found. */
export interface Way {
  readonly turn: number;
  readonly mirrored: boolean;
  readonly pairs: readonly Pair[];
  /** How much worse it explains the holes, in holes and pins that stay unexplained; below 0 where it is better. */
  readonly cost: number;
}

/** A way that leaves this share more unexplained is no rival. */
const RIVAL = 0.35;

/**
 * How else the holes could lie on the pattern. Every guess of the search is taken as a turn and shift of the card on its
 * pattern, and judged by all holes. Rivals only, the best first.
 */
export function otherWays(
  camera: Camera,
  guesses: readonly Guess[],
  spots: Neighbourhood,
  target: Target,
): Way[] {
  const read = fromPixel(camera);
  const flat: Neighbourhood = { ...spots, points: spots.points.map((place) => read(pixelOf(place))) };
  const every = flat.points.map((_, k) => k);
  const pairsOf = (map: (place: Point) => Point): Pair[] => paired(every, flat, target, map);
  const own = unexplained(
    pairsOf((place) => place),
    flat,
    target,
    (place) => place,
  );
  const limit = RIVAL * target.pins.points.length;
  const sample = every.filter((k) => k % Math.ceil(every.length / SAMPLE) === 0);
  const corners = cornersOf(target.pins.points);
  const starts: Affine[] = [identity];
  const ends: Affine[] = [identity];
  const ways: Way[] = [];
  const isIn = (motions: readonly Affine[], motion: Affine): boolean =>
    motions.some((other) => isSame(other, motion, corners, 0.5 * target.pins.spacing));
  for (const { pairs } of guesses) {
    const start = motionOf(pairs, flat, target);
    if (start === null || isIn(starts, start)) continue;
    starts.push(start);
    if (paired(sample, flat, target, (place) => applyAffine(start, place)).length < sample.length / 3)
      continue;
    let motion = start;
    let found: Pair[] = [];
    for (let round = 0; round < 3; round++) {
      const carry = motion;
      found = pairsOf((place) => applyAffine(carry, place));
      if (found.length < target.pins.points.length / 3) break;
      motion = motionOf(found, flat, target) ?? motion;
    }
    const last = motion;
    if (isIn(ends, last)) continue;
    ends.push(last);
    const cost = unexplained(found, flat, target, (place) => applyAffine(last, place)) - own;
    if (cost > limit) continue;
    ways.push({
      turn: Math.atan2(last.b, last.a),
      mirrored: last.a * last.d < last.b * last.c,
      pairs: found,
      cost,
    });
  }
  return ways.sort((p, q) => p.cost - q.cost);
}

/** So many spots tell whether a way is worth a closer look. */
const SAMPLE = 60;

/** What a laying leaves over: holes without a pin, pins without a hole, and in small the distances of the rest. */
function unexplained(
  pairs: readonly Pair[],
  flat: Neighbourhood,
  { pins }: Target,
  map: (place: Point) => Point,
): number {
  const reach = 0.3 * pins.spacing;
  let sum = flat.points.length + pins.points.length - 2 * pairs.length;
  for (const [spot, pin] of pairs) {
    const { x, y } = map(flat.points[spot]!);
    const at = pins.points[pin]!;
    sum += 2 * Math.min(1, ((x - at.x) ** 2 + (y - at.y) ** 2) / reach ** 2);
  }
  return sum;
}

/** The turn, with or without turning over, and the shift that carry holes on to their pins best (Umeyama 1991). */
function motionOf(pairs: readonly Pair[], flat: Neighbourhood, { pins }: Target): Affine | null {
  if (pairs.length < 4) return null;
  let [px, py, qx, qy] = [0, 0, 0, 0];
  for (const [spot, pin] of pairs) {
    px += flat.points[spot]!.x / pairs.length;
    py += flat.points[spot]!.y / pairs.length;
    qx += pins.points[pin]!.x / pairs.length;
    qy += pins.points[pin]!.y / pairs.length;
  }
  let [xx, xy, yx, yy] = [0, 0, 0, 0];
  for (const [spot, pin] of pairs) {
    const [x, y] = [flat.points[spot]!.x - px, flat.points[spot]!.y - py];
    const [u, v] = [pins.points[pin]!.x - qx, pins.points[pin]!.y - qy];
    xx += x * u;
    xy += x * v;
    yx += y * u;
    yy += y * v;
  }
  const flip = xx * yy - xy * yx < 0 ? -1 : 1;
  const angle = Math.atan2(xy - flip * yx, xx + flip * yy);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const map = { a: cos, b: sin, c: -flip * sin, d: flip * cos };
  return { ...map, e: qx - map.a * px - map.c * py, f: qy - map.b * px - map.d * py };
}

/** Whether two motions carry the corners of the pattern to the same places, to within `near`. */
const isSame = (one: Affine, other: Affine, corners: readonly Point[], near: number): boolean =>
  corners.every((corner) => distance(applyAffine(one, corner), applyAffine(other, corner)) < near);

function cornersOf(points: readonly Point[]): Point[] {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: left, y: bottom },
  ];
}
