import type { Cubic } from './curve.ts';
import { between, distance, type Point } from './point.ts';

/** A point that a closed curve passes through; at a sharp one it may turn a corner. */
export interface Knot extends Point {
  readonly sharp?: boolean;
}

/**
 * A closed curve through all knots, in their order: the centripetal Catmull-Rom spline (Yuksel, Schaefer & Keyser,
 * Computer-Aided Design 43 (2011) 747), which makes no loops between its knots. One list of cubics for each part from
 * one sharp knot to the next, beginning at the first sharp one; a single list where no knot is sharp. Between two sharp
 * neighbours it runs straight. No two neighbours may stand on one spot.
 */
export function closedSpline(knots: readonly Knot[]): readonly (readonly Cubic[])[] {
  const count = knots.length;
  if (count < 3) throw new RangeError(`closedSpline: ${count} knots enclose nothing`);
  const at = (k: number): Knot => knots[((k % count) + count) % count]!;
  const start = Math.max(
    0,
    knots.findIndex(({ sharp }) => sharp),
  );
  const parts: Cubic[][] = [];
  for (let k = start; k < start + count; k++) {
    if (k === start || at(k).sharp) parts.push([]);
    parts.at(-1)!.push(cubicBetween(at(k - 1), at(k), at(k + 1), at(k + 2)));
  }
  return parts;
}

function cubicBetween(before: Knot, from: Knot, to: Knot, after: Knot): Cubic {
  if (from.sharp && to.sharp) return [from, between(from, to, 1 / 3), between(from, to, 2 / 3), to];
  const leaving = from.sharp ? null : handle(before, from, to);
  const coming = to.sharp ? null : handle(after, to, from);
  return [from, leaving ?? between(from, coming!, 0.5), coming ?? between(to, leaving!, 0.5), to];
}

/** The point that shapes a cubic at its end `here`, on the side of `next`. */
function handle(last: Point, here: Point, next: Point): Point {
  const [d, e] = [Math.sqrt(distance(last, here)), Math.sqrt(distance(here, next))];
  const along = (axis: 'x' | 'y') =>
    (d * d * next[axis] - e * e * last[axis] + (2 * d * d + 3 * d * e + e * e) * here[axis]) /
    (3 * d * (d + e));
  return { x: along('x'), y: along('y') };
}
