import { fitCircle } from '#base/fit/circle.ts';
import { type EvenCurveFit, fitEvenCurve } from '#base/fit/even-curve.ts';
import { smoothSequences } from '#base/fit/smooth.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Chain } from './chain.ts';

/** One way to lay a chain: a place for every slot from the first pin to the last, lacking pins included. */
export interface Course {
  readonly shape: 'line' | 'arc' | 'curve';
  readonly path: readonly Point[];
  /** Which slot each pin of the chain holds. */
  readonly slots: readonly number[];
  /** Sum of squared moves. */
  readonly squares: number;
  /** Parameters spent; each pin brings two coordinates. */
  readonly freedom: number;
}

type Links = Pick<Chain, 'steps' | 'closed'>;

/** The slot of each pin, and how many slots there are: once round where the chain closes. */
function slotsOf(count: number, { steps, closed }: Links): { slots: number[]; length: number } {
  const slots: number[] = [0];
  for (let k = 1; k < count; k++) slots.push(slots[k - 1]! + steps[k - 1]!);
  return { slots, length: slots.at(-1)! + (closed ? steps.at(-1)! : 1) };
}

/** Smoothing strengths tried, as powers of ten. */
const STRENGTHS = Array.from({ length: 25 }, (_, k) => -1.5 + 0.3 * k);
const ENOUGH_FOR_A_LINE = 1e10;
/** So many slots beyond each end of a closed chain stand for the way round. */
const WRAP = 12;

/** Both coordinates smoothed along the chain, from hardly at all to nearly straight. */
export function smoothCourses(points: readonly Point[], chain: Links): Course[] {
  const orders = points.length > 4 ? [2, 3] : [2];
  return orders.flatMap((order) =>
    STRENGTHS.map((power): Course => ({ ...smoothed(points, chain, order, 10 ** power), shape: 'curve' })),
  );
}

/** Even steps on a straight line. */
export const lineCourse = (points: readonly Point[], chain: Links): Course => ({
  ...smoothed(points, chain, 2, ENOUGH_FOR_A_LINE),
  shape: 'line',
});

function smoothed(
  points: readonly Point[],
  chain: Links,
  order: number,
  lambda: number,
): Omit<Course, 'shape'> {
  const { slots, length } = slotsOf(points.length, chain);
  const wrap = chain.closed ? Math.min(WRAP, length) : 0;
  const xs = new Float64Array(length + 2 * wrap);
  const ys = new Float64Array(length + 2 * wrap);
  const weights = new Float64Array(length + 2 * wrap);
  let pinned = 0;
  // The first pin is the origin, which keeps the arithmetic exact far from the sheet's own.
  const base = points[0]!;
  for (const turn of chain.closed ? [-length, 0, length] : [0]) {
    points.forEach(({ x, y }, k) => {
      const at = slots[k]! + turn + wrap;
      if (at < 0 || at >= weights.length) return;
      xs[at] = x - base.x;
      ys[at] = y - base.y;
      weights[at] = 1;
      pinned++;
    });
  }
  const { fits, freedom } = smoothSequences([xs, ys], weights, order, lambda);
  const path = Array.from({ length }, (_, slot) => ({
    x: base.x + fits[0]![slot + wrap]!,
    y: base.y + fits[1]![slot + wrap]!,
  }));
  // A closed chain is laid out more than once round; only its share of the freedom is spent on it.
  return {
    path,
    slots,
    squares: squaresOf(points, path, slots),
    freedom: (2 * freedom * points.length) / pinned,
  };
}

function squaresOf(points: readonly Point[], path: readonly Point[], slots: readonly number[]): number {
  let squares = 0;
  points.forEach(({ x, y }, k) => {
    const place = path[slots[k]!]!;
    squares += (x - place.x) ** 2 + (y - place.y) ** 2;
  });
  return squares;
}

/** A closed ring of even steps: four parameters, centre, radius and beginning. */
export function circleCourses(points: readonly Point[], chain: Links): Course[] {
  const circle = points.length < 5 ? null : fitCircle(points);
  if (circle === null) return [];
  const { slots, length } = slotsOf(points.length, chain);
  const { centre, radius } = circle;
  return [1, -1].map((way): Course => {
    const step = (way * 2 * Math.PI) / length;
    let [cos, sin] = [0, 0];
    points.forEach(({ x, y }, k) => {
      const angle = Math.atan2(y - centre.y, x - centre.x) - step * slots[k]!;
      cos += Math.cos(angle);
      sin += Math.sin(angle);
    });
    const start = Math.atan2(sin, cos);
    const path = Array.from({ length }, (_, slot) => ({
      x: centre.x + radius * Math.cos(start + step * slot),
      y: centre.y + radius * Math.sin(start + step * slot),
    }));
    return { shape: 'arc', path, slots, squares: squaresOf(points, path, slots), freedom: 4 };
  });
}

/** How many coefficients the heading may have. */
const SHAPES = [1, 2, 3, 4, 5, 6, 8, 10, 13, 16, 20, 25, 31, 38];
/** A long chain is laid in pieces of so many slots that overlap, so that the cost grows with its length only. */
const PIECE = 110;
const OVERLAP = 30;

/** Even steps along curves of more and more freely changing heading, starting from an already smooth course. */
export function evenCourses(
  points: readonly Point[],
  chain: Links,
  { path, slots }: Course,
  score: (course: Course) => number,
): Course[] {
  if (points.length < 5) return [];
  const wrap = chain.closed ? Math.min(WRAP, path.length) : 0;
  const around = chain.closed ? unrolled(points, slots, path, wrap) : { points, slots, path };
  const fit = inPieces(around.points, around.slots, around.path, score);
  if (fit === null) return [];
  const own = fit.path.slice(wrap, wrap + path.length);
  const freedom = (fit.freedom * points.length) / around.points.length;
  return [{ shape: fit.shape, path: own, slots, squares: squaresOf(points, own, slots), freedom }];
}

interface Strip {
  readonly points: readonly Point[];
  readonly slots: readonly number[];
  readonly path: readonly Point[];
}

/** A closed chain laid out open, with `wrap` slots more at each end. */
function unrolled(
  points: readonly Point[],
  slots: readonly number[],
  path: readonly Point[],
  wrap: number,
): Strip {
  const all: { point: Point; slot: number }[] = [];
  for (const turn of [-1, 0, 1]) {
    points.forEach((point, k) => {
      const slot = slots[k]! + turn * path.length + wrap;
      if (slot >= 0 && slot < path.length + 2 * wrap) all.push({ point, slot });
    });
  }
  const length = path.length + 2 * wrap;
  return {
    points: all.map(({ point }) => point),
    slots: all.map(({ slot }) => slot),
    path: Array.from({ length }, (_, slot) => path[(slot - wrap + path.length) % path.length]!),
  };
}

function inPieces(
  points: readonly Point[],
  slots: readonly number[],
  path: readonly Point[],
  score: (course: Course) => number,
): Omit<Course, 'squares' | 'slots'> | null {
  if (path.length <= PIECE + OVERLAP) return bestShape(points, slots, path, score);
  const blended = path.map(() => ({ x: 0, y: 0, weight: 0 }));
  let freedom = 0;
  for (let from = 0; from + OVERLAP < path.length; from += PIECE - OVERLAP) {
    const to = Math.min(path.length, from + PIECE);
    const own = slots.flatMap((slot, k) => (slot >= from && slot < to ? [k] : []));
    const piece = bestShape(
      own.map((k) => points[k]!),
      own.map((k) => slots[k]! - from),
      path.slice(from, to),
      score,
    );
    if (piece === null) return null;
    freedom += (piece.freedom * (PIECE - OVERLAP)) / PIECE;
    piece.path.forEach(({ x, y }, k) => {
      const weight = Math.min(k + 1, to - from - k, OVERLAP);
      const into = blended[from + k]!;
      into.x += weight * x;
      into.y += weight * y;
      into.weight += weight;
    });
  }
  return {
    shape: 'curve',
    path: blended.map(({ x, y, weight }) => ({ x: x / weight, y: y / weight })),
    freedom,
  };
}

function bestShape(
  points: readonly Point[],
  slots: readonly number[],
  path: readonly Point[],
  score: (course: Course) => number,
): Omit<Course, 'squares' | 'slots'> | null {
  let best: Course | null = null;
  let least = Infinity;
  let worse = 0;
  for (const shape of SHAPES) {
    if (shape > 0.6 * points.length || worse >= PATIENCE) break;
    const fit: EvenCurveFit | null = fitEvenCurve(points, slots, path, shape);
    if (fit === null) continue;
    const course: Course = {
      shape: shape === 1 ? 'line' : shape === 2 ? 'arc' : 'curve',
      path: fit.places,
      slots,
      squares: fit.squares,
      freedom: fit.freedom,
    };
    const value = score(course);
    worse = value < least ? 0 : worse + 1;
    if (value < least) {
      least = value;
      best = course;
    }
  }
  return best;
}

/** After so many richer shapes that were no better the search ends. */
const PATIENCE = 5;
