import type { Cubic } from './curve.ts';
import { add, distance, type Point, scale, subtract } from './point.ts';

/**
 * The natural cubic spline through points: no bend at either end, and curvature without a jump between
 * (C. de Boor, A Practical Guide to Splines, 1978). The parameter runs by the root of the chord, which keeps uneven
 * points from making loops (E. T. Y. Lee, Computer-Aided Design 21 (1989) 363). Needs two different neighbours at least.
 */
export function splineThrough(points: readonly Point[]): Cubic[] {
  const knots = knotSteps(points);
  const n = points.length;
  const slopes = knots.map((step, k) => scale(subtract(points[k + 1]!, points[k]!), 1 / step));
  const below = new Float64Array(n);
  const middle = new Float64Array(n);
  const above = new Float64Array(n);
  const right = new Array<Point>(n);
  middle[0] = 2;
  above[0] = 1;
  right[0] = scale(slopes[0]!, 3);
  for (let k = 1; k < n - 1; k++) {
    below[k] = knots[k]!;
    middle[k] = 2 * (knots[k - 1]! + knots[k]!);
    above[k] = knots[k - 1]!;
    right[k] = scale(add(scale(slopes[k - 1]!, knots[k]!), scale(slopes[k]!, knots[k - 1]!)), 3);
  }
  below[n - 1] = 1;
  middle[n - 1] = 2;
  right[n - 1] = scale(slopes.at(-1)!, 3);
  return bezierSpans(points, knots, solveThreeBand(below, middle, above, right));
}

/**
 * The cubic spline through points that comes again after its last: through the first once more, moved by `step`.
 * A step of nothing closes the curve. One period is given; its ends join as smoothly as its insides.
 */
export function periodicSpline(points: readonly Point[], step: Point): Cubic[] {
  const n = points.length;
  const all = [...points, add(points[0]!, step)];
  const knots = knotSteps(all);
  const slopes = knots.map((size, k) => scale(subtract(all[k + 1]!, all[k]!), 1 / size));
  const below = new Float64Array(n);
  const middle = new Float64Array(n);
  const above = new Float64Array(n);
  const right = slopes.map((slope, k) => {
    const [before, after] = [knots[(k - 1 + n) % n]!, knots[k]!];
    below[k] = after;
    middle[k] = 2 * (before + after);
    above[k] = before;
    return scale(add(scale(slopes[(k - 1 + n) % n]!, after), scale(slope, before)), 3);
  });
  const tangents = solveThreeBandRound(below, middle, above, right);
  return bezierSpans(all, knots, [...tangents, tangents[0]!]);
}

const knotSteps = (points: readonly Point[]): number[] =>
  points.slice(1).map((point, k) => {
    const step = Math.sqrt(distance(points[k]!, point));
    if (step === 0) throw new RangeError(`spline: points ${k} and ${k + 1} lie on one spot`);
    return step;
  });

const bezierSpans = (
  points: readonly Point[],
  knots: readonly number[],
  tangents: readonly Point[],
): Cubic[] =>
  knots.map((step, k) => [
    points[k]!,
    add(points[k]!, scale(tangents[k]!, step / 3)),
    subtract(points[k + 1]!, scale(tangents[k + 1]!, step / 3)),
    points[k + 1]!,
  ]);

/** Gauss's elimination for three bands; the middle one outweighs the others, so that no pivoting is needed. */
function solveThreeBand(
  below: Float64Array,
  middle: Float64Array,
  above: Float64Array,
  right: readonly Point[],
): Point[] {
  const n = right.length;
  const pivots = Float64Array.from(middle);
  const values = [...right];
  for (let k = 1; k < n; k++) {
    const factor = below[k]! / pivots[k - 1]!;
    pivots[k]! -= factor * above[k - 1]!;
    values[k] = subtract(values[k]!, scale(values[k - 1]!, factor));
  }
  for (let k = n - 1; k >= 0; k--) {
    const rest = k === n - 1 ? values[k]! : subtract(values[k]!, scale(values[k + 1]!, above[k]!));
    values[k] = scale(rest, 1 / pivots[k]!);
  }
  return values;
}

/** The same where the first row reaches the last value and the last row the first (Sherman & Morrison 1950). */
function solveThreeBandRound(
  below: Float64Array,
  middle: Float64Array,
  above: Float64Array,
  right: readonly Point[],
): Point[] {
  const n = right.length;
  if (n === 1) return [scale(right[0]!, 1 / (below[0]! + middle[0]! + above[0]!))];
  if (n === 2) return solveTwo(below, middle, above, right);
  const corner = -middle[0]!;
  const [first, last] = [below[0]!, above[n - 1]!];
  const plain = Float64Array.from(middle);
  plain[0]! -= corner;
  plain[n - 1]! -= (first * last) / corner;
  const values = solveThreeBand(below, plain, above, right);
  const unit = right.map((_, k): Point => ({ x: k === 0 ? corner : k === n - 1 ? last : 0, y: 0 }));
  const answer = solveThreeBand(below, plain, above, unit).map(({ x }) => x);
  const share = first / corner;
  const size = 1 + answer[0]! + share * answer[n - 1]!;
  const off = scale(add(values[0]!, scale(values[n - 1]!, share)), 1 / size);
  return values.map((value, k) => subtract(value, scale(off, answer[k]!)));
}

/** Two rows whose neighbours on both sides are one and the same. */
function solveTwo(
  below: Float64Array,
  middle: Float64Array,
  above: Float64Array,
  [first, second]: readonly Point[],
): Point[] {
  const [p, q] = [below[0]! + above[0]!, below[1]! + above[1]!];
  const size = middle[0]! * middle[1]! - p * q;
  return [
    scale(subtract(scale(first!, middle[1]!), scale(second!, p)), 1 / size),
    scale(subtract(scale(second!, middle[0]!), scale(first!, q)), 1 / size),
  ];
}
