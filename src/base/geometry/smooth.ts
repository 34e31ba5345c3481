import { type Cubic, cubicPoint } from './curve.ts';
import { distance, type Point } from './point.ts';

/**
 * A smooth curve through all the points: cubic pieces whose tangents run along the neighbours
 * (Catmull and Rom 1974, uniform, as Bezier pieces with handles of one sixth). One piece for each step between points;
 * closed, another back to the first.
 */
export function smoothThrough(points: readonly Point[], closed: boolean): Cubic[] {
  const count = points.length;
  const at = (index: number): Point =>
    closed ? points[(index + count) % count]! : points[Math.min(count - 1, Math.max(0, index))]!;
  return Array.from({ length: Math.max(0, closed ? count : count - 1) }, (_, index): Cubic => {
    const [before, from, to, after] = [at(index - 1), at(index), at(index + 1), at(index + 2)];
    return [
      from,
      { x: from.x + (to.x - before.x) / 6, y: from.y + (to.y - before.y) / 6 },
      { x: to.x - (after.x - from.x) / 6, y: to.y - (after.y - from.y) / 6 },
      to,
    ];
  });
}

/**
 * Places along a cubic piece between its ends, so many that straight steps from one to the next stay within `off` of it
 * (G. Wang's bound on the second differences, 1984).
 */
export function placesAlong(cubic: Cubic, off: number): Point[] {
  const [a, b, c, d] = cubic;
  const middle = (p: Point, q: Point): Point => ({ x: 2 * q.x - p.x, y: 2 * q.y - p.y });
  const bend = Math.max(distance(middle(a, b), c), distance(middle(b, c), d));
  const steps = Math.min(MOST_STEPS, Math.ceil(Math.sqrt((0.75 * bend) / off)));
  return Array.from({ length: Math.max(0, steps - 1) }, (_, step) => cubicPoint(cubic, (step + 1) / steps));
}

const MOST_STEPS = 64;
