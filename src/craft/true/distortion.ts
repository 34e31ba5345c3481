import { type Affine, identity, scaling } from '#base/geometry/affine.ts';
import { cross, distance, dot, length, type Point } from '#base/geometry/point.ts';
import type { Lattice, Regularity, Structure } from '#pattern/structure.ts';

/** What a person knows of the pattern before it was copied. */
export interface KnownTruth {
  /** Angle between the lattice's rows and the footside, radians: pi / 4 for a ground at 45 degrees. */
  readonly trueAngle?: number;
  /** The true distance of two pins, mm, by their index. */
  readonly knownDistance?: { readonly from: number; readonly to: number; readonly length: number };
}

/**
 * The map that undoes what copying did to a pattern, or null where nothing is known that shows it.
 *
 * A true angle tells the skew and the unequal scale: the rows on either side of the footside must make the same angle
 * with it and have the same spacing. A known distance tells the size. Without one, the area keeps its size, and the
 * pattern its direction as far as can be.
 */
export function copyDistortion(
  regularity: Regularity,
  { trueAngle, knownDistance }: KnownTruth,
): Affine | null {
  if (trueAngle === undefined && knownDistance === undefined) return null;
  let map = identity;
  if (trueAngle !== undefined) {
    if (!(trueAngle > 0 && trueAngle < Math.PI / 2)) {
      throw new RangeError(`copyDistortion: the true angle ${trueAngle} is not between 0 and a quarter turn`);
    }
    const lattice = largestLattice(regularity.structures);
    if (lattice === null)
      return knownDistance === undefined ? null : resized(regularity, identity, knownDistance);
    map = unskew(lattice, footsideOf(regularity), trueAngle);
  }
  return knownDistance === undefined ? map : resized(regularity, map, knownDistance);
}

function largestLattice(structures: readonly Structure[]): Lattice | null {
  let largest: Lattice | null = null;
  for (const structure of structures) {
    if (structure.kind === 'lattice' && structure.pins.length > (largest?.pins.length ?? 0))
      largest = structure;
  }
  return largest;
}

/** The direction of the longest straight run: in an edging that is the footside. Null where there is none. */
function footsideOf({ structures, places }: Regularity): Point | null {
  let longest: Point | null = null;
  for (const structure of structures) {
    if (structure.kind !== 'run' || structure.shape !== 'line' || structure.pins.length < 8) continue;
    const from = places[structure.pins[0]!]!;
    const to = places[structure.pins.at(-1)!]!;
    const step = { x: to.x - from.x, y: to.y - from.y };
    if (longest === null || length(step) > length(longest)) longest = step;
  }
  return longest;
}

/** Pairs of steps that could be the two kinds of row: small whole combinations that still span the whole lattice. */
function rowPairs({ a, b }: Lattice): [Point, Point][] {
  const steps: { i: number; j: number; step: Point }[] = [];
  for (let i = -2; i <= 2; i++) {
    for (let j = -2; j <= 2; j++) {
      if (i !== 0 || j !== 0) steps.push({ i, j, step: { x: i * a.x + j * b.x, y: i * a.y + j * b.y } });
    }
  }
  return steps.flatMap((u) =>
    steps
      .filter((v) => Math.abs(u.i * v.j - u.j * v.i) === 1 && cross(u.step, v.step) > 0)
      .map((v): [Point, Point] => [u.step, v.step]),
  );
}

function unskew(lattice: Lattice, footside: Point | null, angle: number): Affine {
  let best: { u: Point; v: Point } | null = null;
  let least = Infinity;
  for (const [u, v] of rowPairs(lattice)) {
    const along = { x: u.x + v.x, y: u.y + v.y };
    const off = Math.abs(Math.log(length(u) / length(v))) + Math.abs(between(u, v) / 2 - angle);
    const turn = footside === null ? 0 : Math.abs(Math.sin(between(along, footside)));
    if (off + 2 * turn < least) {
      least = off + 2 * turn;
      best = { u, v };
    }
  }
  const { u, v } = best!;
  // The rows as they should be, about the x axis as footside.
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const det = cross(u, v);
  // target * inverse([u v]), the target's columns being (cos, -sin) and (cos, sin).
  const raw = {
    a: (cos * v.y - cos * u.y) / det,
    c: (-cos * v.x + cos * u.x) / det,
    b: (-sin * v.y - sin * u.y) / det,
    d: (sin * v.x + sin * u.x) / det,
  };
  return nearestToIdentity(raw);
}

const between = (u: Point, v: Point): number => Math.atan2(Math.abs(cross(u, v)), dot(u, v));

/** The same map up to turn and size, turned and sized to be as near to no change as can be, keeping areas. */
function nearestToIdentity({ a, b, c, d }: Pick<Affine, 'a' | 'b' | 'c' | 'd'>): Affine {
  const size = 1 / Math.sqrt(Math.abs(a * d - b * c));
  const turn = Math.atan2(b - c, a + d);
  const cos = Math.cos(turn) * size;
  const sin = Math.sin(turn) * size;
  return {
    a: cos * a + sin * b,
    b: cos * b - sin * a,
    c: cos * c + sin * d,
    d: cos * d - sin * c,
    e: 0,
    f: 0,
  };
}

function resized(
  { places }: Regularity,
  map: Affine,
  { from, to, length: truth }: NonNullable<KnownTruth['knownDistance']>,
): Affine {
  const start = places[from];
  const end = places[to];
  if (start === undefined || end === undefined) {
    throw new RangeError(`copyDistortion: there is no pin ${start === undefined ? from : to}`);
  }
  const move = ({ x, y }: Point): Point => ({ x: map.a * x + map.c * y, y: map.b * x + map.d * y });
  const now = distance(move(start), move(end));
  if (!(truth > 0) || !(now > 0)) {
    throw new RangeError(
      `copyDistortion: pins ${from} and ${to} stand ${now} apart and should stand ${truth} apart`,
    );
  }
  const size = scaling(truth / now);
  return { a: map.a * size.a, b: map.b * size.a, c: map.c * size.a, d: map.d * size.a, e: 0, f: 0 };
}
