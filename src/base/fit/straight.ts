import { dot, type Point, subtract } from '#base/geometry/point.ts';

/** A straight line through `through` along `direction`, which has length 1. */
export interface StraightLine {
  readonly through: Point;
  readonly direction: Point;
}

/**
 * The line that passes nearest to the points, counted square to it (total least squares; K. Pearson, Philosophical
 * Magazine 2 (1901) 559-572). It runs roughly from the first point to the last. One point, or points that lie round
 * about alike, give a line along x. Throws with no points.
 */
export function fitStraight(points: readonly Point[]): StraightLine {
  const first = points[0];
  if (first === undefined) throw new RangeError('fitStraight: no points');
  const mean = { x: 0, y: 0 };
  for (const { x, y } of points) {
    mean.x += x / points.length;
    mean.y += y / points.length;
  }
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of points) {
    xx += (x - mean.x) ** 2;
    xy += (x - mean.x) * (y - mean.y);
    yy += (y - mean.y) ** 2;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const along = { x: Math.cos(angle), y: Math.sin(angle) };
  const forward = dot(subtract(points.at(-1)!, first), along) >= 0;
  return { through: mean, direction: forward ? along : { x: -along.x, y: -along.y } };
}

/** How far along the line the foot of a point lies, from `through`. */
export const alongLine = ({ through, direction }: StraightLine, point: Point): number =>
  dot(subtract(point, through), direction);

/** How far a point stands off the line: positive to the right of its direction, on a sheet whose y runs down. */
export const offLine = ({ through, direction }: StraightLine, { x, y }: Point): number =>
  direction.x * (y - through.y) - direction.y * (x - through.x);

/** Whether all points stand within a distance of the line that fits them best. */
export function lieStraight(points: readonly Point[], within: number): boolean {
  const line = fitStraight(points);
  return points.every((point) => Math.abs(offLine(line, point)) <= within);
}
