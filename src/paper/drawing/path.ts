import { type Box, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { smoothThrough } from '#base/geometry/smooth.ts';

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

/** A smooth curve through all the points (see `smoothThrough`). */
export function smoothCurve(points: readonly Point[], closed = false): Path {
  if (points.length < 3) return polyline(points, closed);
  const steps: PathStep[] = [{ step: 'move', to: points[0]! }];
  for (const [, first, second, to] of smoothThrough(points, closed)) {
    steps.push({ step: 'curve', first, second, to });
  }
  if (closed) steps.push({ step: 'close' });
  return steps;
}

/**
 * Handle length of the cubic that draws a quarter of the unit circle, 4/3 (sqrt 2 - 1):
 * the radius is then off by at most 0.03 % (A. Riskus, Information Technology and Control 35 (2006)).
 */
export const QUARTER_CIRCLE = (4 / 3) * (Math.SQRT2 - 1);
