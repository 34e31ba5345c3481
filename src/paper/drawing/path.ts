import { type Box, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';

/** One step of a drawn line; `curve` is a cubic Bezier curve with its two control points. */
export type PathStep =
  | { readonly step: 'move'; readonly to: Point }
  | { readonly step: 'line'; readonly to: Point }
  | { readonly step: 'curve'; readonly first: Point; readonly second: Point; readonly to: Point }
  | { readonly step: 'close' };

export type Path = readonly PathStep[];

/** Straight lines from point to point; nothing where there are fewer than two points. */
export function polyline(points: readonly Point[], closed = false): Path {
  if (points.length < 2) return [];
  const steps: PathStep[] = points.map((to, index) =>
    index === 0 ? { step: 'move', to } : { step: 'line', to },
  );
  if (closed) steps.push({ step: 'close' });
  return steps;
}

export const segment = (from: Point, to: Point): Path => polyline([from, to]);

export const rectangle = ({ left, top, right, bottom }: Box): Path =>
  polyline(
    [
      { x: left, y: top },
      { x: right, y: top },
      { x: right, y: bottom },
      { x: left, y: bottom },
    ],
    true,
  );

/**
 * The line that keeps everywhere the same distance from an upright rectangle: its parallel outside, with round corners.
 * It encloses `A + L d + pi d^2` and is `L + 2 pi d` long, where A and L are the rectangle's area and outline (Steiner).
 */
export const parallelOf = (box: Box, away: number): Path => roundedRectangle(growBox(box, away), away);

/** An upright rectangle whose corners are rounded by quarter circles of `radius`. */
export function roundedRectangle({ left, top, right, bottom }: Box, radius: number): Path {
  const handle = radius * (1 - QUARTER_CIRCLE);
  const p = (x: number, y: number): Point => ({ x, y });
  return [
    { step: 'move', to: p(left + radius, top) },
    { step: 'line', to: p(right - radius, top) },
    {
      step: 'curve',
      first: p(right - handle, top),
      second: p(right, top + handle),
      to: p(right, top + radius),
    },
    { step: 'line', to: p(right, bottom - radius) },
    {
      step: 'curve',
      first: p(right, bottom - handle),
      second: p(right - handle, bottom),
      to: p(right - radius, bottom),
    },
    { step: 'line', to: p(left + radius, bottom) },
    {
      step: 'curve',
      first: p(left + handle, bottom),
      second: p(left, bottom - handle),
      to: p(left, bottom - radius),
    },
    { step: 'line', to: p(left, top + radius) },
    { step: 'curve', first: p(left, top + handle), second: p(left + handle, top), to: p(left + radius, top) },
    { step: 'close' },
  ];
}

/**
 * A smooth curve through all the points: cubic pieces whose tangents run along the neighbours
 * (Catmull and Rom 1974, uniform, as Bezier pieces with handles of one sixth).
 */
export function smoothCurve(points: readonly Point[], closed = false): Path {
  if (points.length < 3) return polyline(points, closed);
  const count = points.length;
  const at = (index: number): Point =>
    closed ? points[(index + count) % count]! : points[Math.min(count - 1, Math.max(0, index))]!;
  const steps: PathStep[] = [{ step: 'move', to: at(0) }];
  for (let index = 0; index < (closed ? count : count - 1); index++) {
    const [before, from, to, after] = [at(index - 1), at(index), at(index + 1), at(index + 2)];
    steps.push({
      step: 'curve',
      first: { x: from.x + (to.x - before.x) / 6, y: from.y + (to.y - before.y) / 6 },
      second: { x: to.x - (after.x - from.x) / 6, y: to.y - (after.y - from.y) / 6 },
      to,
    });
  }
  if (closed) steps.push({ step: 'close' });
  return steps;
}

/**
 * Handle length of the cubic that draws a quarter of the unit circle, 4/3 (sqrt 2 - 1):
 * the radius is then off by at most 0.03 % (A. Riskus, Information Technology and Control 35 (2006)).
 */
export const QUARTER_CIRCLE = (4 / 3) * (Math.SQRT2 - 1);
