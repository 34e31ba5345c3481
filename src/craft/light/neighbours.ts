import { median } from '#base/fit/robust.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';

/** Points with the nearest others of each, nearest first. */
export interface Neighbourhood {
  readonly points: readonly Point[];
  readonly index: PointIndex;
  /** Distance from each point to its nearest other. */
  readonly nearest: Float64Array;
  /** The middle one of those distances: how close the points stand. */
  readonly spacing: number;
}

export function neighbourhoodOf(points: readonly Point[]): Neighbourhood {
  const index = new PointIndex(points);
  const usual = usualStep(points);
  const nearest = Float64Array.from(points, (_, k) => {
    const [other] = nearestTo(points, index, k, 1, usual);
    return other === undefined ? usual : apart(points[k]!, points[other]!);
  });
  return { points, index, nearest, spacing: median(nearest) };
}

/** The `count` points nearest to point `of`, nearest first, ties by index; fewer only where there are no more. */
export const around = ({ points, index, spacing }: Neighbourhood, of: number, count: number): number[] =>
  nearestTo(points, index, of, count, spacing);

function nearestTo(
  points: readonly Point[],
  index: PointIndex,
  of: number,
  count: number,
  step: number,
): number[] {
  const place = points[of]!;
  const wanted = Math.min(count, points.length - 1);
  let radius = step * (1 + Math.sqrt(count));
  let found = index.within(place, radius);
  while (found.length <= wanted) {
    radius *= 2;
    found = radius < 1e9 ? index.within(place, radius) : points.map((_, k) => k);
  }
  return found
    .filter((other) => other !== of)
    .map((other) => ({ other, away: apart(place, points[other]!) }))
    .sort((a, b) => a.away - b.away || a.other - b.other)
    .slice(0, count)
    .map(({ other }) => other);
}

/** How far neighbours would be apart if the points lay evenly in their box. */
function usualStep(points: readonly Point[]): number {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  const step = Math.sqrt(((right - left) * (bottom - top)) / Math.max(1, points.length));
  return step > 0 ? step : Math.max(right - left, bottom - top, 1e-6) / Math.max(1, points.length);
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
