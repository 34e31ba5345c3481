import type { Point } from '#base/geometry/point.ts';
import type { Path } from '../drawing/path.ts';

/** Points joined by straight lines; `closed` from the last back to the first. */
export interface Chain {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** How far a straight piece may run beside the curve that it stands for, mm. */
export const CHORD_ERROR = 0.01;

/** A path as straight lines for machines that know no curves. */
export function flatten(path: Path, error = CHORD_ERROR): Chain[] {
  const chains: Chain[] = [];
  let points: Point[] = [];
  const finish = (closed: boolean): void => {
    if (points.length > 1) chains.push({ points, closed });
    points = [];
  };
  for (const step of path) {
    if (step.step === 'close') finish(true);
    else if (step.step === 'move') {
      finish(false);
      points = [step.to];
    } else if (step.step === 'line') points.push(step.to);
    else points.push(...curvePoints(points.at(-1)!, step.first, step.second, step.to, error));
  }
  finish(false);
  return chains;
}

/** The corners of the polygon in a circle, the first to the right of the centre, then clockwise as y runs down. */
export function circleCorners({ x, y }: Point, diameter: number, error = CHORD_ERROR): Point[] {
  const radius = diameter / 2;
  const count = Math.max(12, Math.ceil(Math.PI / Math.acos(Math.max(0, 1 - error / radius))));
  return Array.from({ length: count }, (_, k) => ({
    x: x + radius * Math.cos((2 * Math.PI * k) / count),
    y: y + radius * Math.sin((2 * Math.PI * k) / count),
  }));
}

/**
 * Points along a cubic Bezier curve at even steps of its parameter, enough that no chord errs by more than `error`:
 * a chord over a step h errs by at most h^2/8 max|B''|, and |B''| is at most 6 times the larger second difference of
 * the control points (the usual bound of linear interpolation, for instance de Boor, A Practical Guide to Splines).
 */
function curvePoints(from: Point, first: Point, second: Point, to: Point, error: number): Point[] {
  const bend = Math.max(
    Math.hypot(from.x - 2 * first.x + second.x, from.y - 2 * first.y + second.y),
    Math.hypot(first.x - 2 * second.x + to.x, first.y - 2 * second.y + to.y),
  );
  const pieces = Math.max(1, Math.ceil(Math.sqrt((6 * bend) / (8 * error))));
  return Array.from({ length: pieces }, (_, k) => {
    const t = (k + 1) / pieces;
    const at = (a: number, b: number, c: number, d: number): number =>
      (1 - t) ** 3 * a + 3 * t * (1 - t) ** 2 * b + 3 * t ** 2 * (1 - t) * c + t ** 3 * d;
    return k + 1 === pieces
      ? to
      : { x: at(from.x, first.x, second.x, to.x), y: at(from.y, first.y, second.y, to.y) };
  });
}
