import type { Point } from '#base/geometry/point.ts';
import type { Chain } from './chain.ts';
import { type Course, circleCourses, evenCourses, lineCourse, smoothCourses } from './courses.ts';

/** A chain laid on a true line, arc or curve. */
export interface RunFit extends Course {
  /** Whether the course hardly leaves the line between its ends. */
  readonly isStraight: boolean;
  /** Where pins lack: after which pin of the chain, and the place. */
  readonly gaps: readonly { readonly after: number; readonly place: Point }[];
  /** Where each pin of the chain should stand. */
  readonly places: readonly Point[];
}

/**
 * The smoothest true course that the noise allows: of all shapes and degrees of smoothing the one of least expected
 * error, by Mallows' Cp (Technometrics 15 (1973)) where the noise `sigma` is known, else by generalised
 * cross-validation (Craven & Wahba, Numerische Mathematik 31 (1979)). All courses keep the pins evenly or at least
 * smoothly spaced; a chain that is neither keeps its pins, because then little smoothing is the least wrong.
 */
export function fitRun(
  points: readonly Point[],
  chain: Pick<Chain, 'steps' | 'closed'>,
  sigma: number | null,
): RunFit {
  const score = (course: Course): number => scoreOf(course, 2 * points.length, sigma);
  const smooth = best(smoothCourses(points, chain), score)!;
  const rivals = chain.closed ? circleCourses(points, chain) : [lineCourse(points, chain)];
  const course = best([smooth, ...rivals, ...evenCourses(points, chain, smooth, score)], score)!;
  return finished(course, chain);
}

function best(courses: readonly Course[], score: (course: Course) => number): Course | null {
  let found: Course | null = null;
  let least = Infinity;
  for (const course of courses) {
    const value = score(course);
    if (found === null || value < least) {
      least = value;
      found = course;
    }
  }
  return found;
}

/**
 * What a parameter must earn, in parts of the noise's variance. Two would be Cp's own; the choice among many courses
 * picks lucky ones, and a little more makes up for that.
 */
const PRICE = 2.6;

function scoreOf({ squares, freedom }: Course, values: number, sigma: number | null): number {
  if (sigma !== null) return squares / (sigma * sigma) + PRICE * freedom;
  // Nearly all freedom spent says nothing about the noise; more than 1 a parameter guards short chains against that.
  const left = values - (PRICE / 2) * freedom;
  return left <= 1 ? Infinity : (values * squares) / (left * left);
}

function finished(course: Course, { steps }: Pick<Chain, 'steps'>): RunFit {
  const { path, slots } = course;
  const places = slots.map((slot) => path[slot]!);
  const gaps = steps.flatMap((step, k) =>
    step === 2 && k < slots.length ? [{ after: k, place: path[slots[k]! + 1]! }] : [],
  );
  const isStraight = straight(places);
  return { ...course, shape: isStraight ? 'line' : course.shape, places, gaps, isStraight };
}

/** A course that bends aside by less than this part of its length is straight. */
const STRAIGHT = 0.02;

function straight(places: readonly Point[]): boolean {
  const from = places[0]!;
  const to = places.at(-1)!;
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  const bend = places.map((place) =>
    Math.abs((place.x - from.x) * (to.y - from.y) - (place.y - from.y) * (to.x - from.x)),
  );
  return size > 0 && Math.max(...bend) / size < STRAIGHT * size;
}
