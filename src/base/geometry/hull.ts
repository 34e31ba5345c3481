import { cross, type Point, subtract } from './point.ts';

/**
 * The corners of the smallest convex outline round all points, in order round it, without points that lie along its
 * sides. Andrew's monotone chain (A. M. Andrew, Information Processing Letters 9 (1979) 216-219); n log n.
 */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const there = halfHull(sorted);
  const back = halfHull(sorted.reverse());
  return there.length <= 1 ? there : [...there.slice(0, -1), ...back.slice(0, -1)];
}

function halfHull(sorted: readonly Point[]): Point[] {
  const hull: Point[] = [];
  for (const point of sorted) {
    while (hull.length >= 2 && !turnsOut(hull.at(-2)!, hull.at(-1)!, point)) hull.pop();
    const last = hull.at(-1);
    if (last === undefined || last.x !== point.x || last.y !== point.y) hull.push(point);
  }
  return hull;
}

const turnsOut = (a: Point, b: Point, c: Point): boolean => cross(subtract(b, a), subtract(c, b)) > 0;
