import { fitCircle } from '#base/fit/circle.ts';
import { smoothSequences } from '#base/fit/smooth.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Chain } from './chains.ts';

/** A chain laid on a true line, arc or curve. */
export interface RunFit {
  readonly shape: 'line' | 'arc' | 'curve';
  /** Whether the course hardly leaves the line between its ends. */
  readonly isStraight: boolean;
  /** Where each pin of the chain should stand. */
  readonly places: readonly Point[];
  /** Where pins lack: after which pin of the chain, and the place. */
  readonly gaps: readonly { readonly after: number; readonly place: Point }[];
  /** Sum of squared moves. */
  readonly squares: number;
  /** Parameters spent; each pin brings two coordinates. */
  readonly freedom: number;
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
  const candidates = [...smoothCourses(points, chain), ...arcCourses(points, chain)];
  let best = candidates[0]!;
  let least = Infinity;
  for (const fit of candidates) {
    const score = scoreOf(fit, 2 * points.length, sigma);
    if (score < least) {
      least = score;
      best = fit;
    }
  }
  return { ...best, isStraight: straight(best.places) };
}

type Course = Omit<RunFit, 'isStraight'>;

function straight(places: readonly Point[]): boolean {
  const from = places[0]!;
  const to = places.at(-1)!;
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  const bend = places.map((place) =>
    Math.abs((place.x - from.x) * (to.y - from.y) - (place.y - from.y) * (to.x - from.x)),
  );
  return size > 0 && Math.max(...bend) / size < STRAIGHT * size;
}

/** A course that bends aside by less than this part of its length is straight. */
const STRAIGHT = 0.02;

function scoreOf({ squares, freedom }: Course, values: number, sigma: number | null): number {
  if (sigma !== null) return squares / (sigma * sigma) + 2 * freedom;
  // Nearly all freedom spent says nothing about the noise; 1.2 a parameter guards short chains against that.
  const left = values - 1.2 * freedom;
  return left <= 1 ? Infinity : (values * squares) / (left * left);
}

/** Smoothing strengths tried, as powers of ten. */
const STRENGTHS = Array.from({ length: 29 }, (_, k) => -1.5 + 0.25 * k);
const ENOUGH_FOR_A_LINE = 1e9;
/** So many pins beyond each end of a closed chain stand for the way round. */
const WRAP = 24;

interface Spread {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly weights: Float64Array;
  /** Where each pin lies in the sequences, which also hold the gaps. */
  readonly slots: readonly number[];
  /** How many slots a closed chain has once round; 0 for an open one. */
  readonly round: number;
}

function smoothCourses(points: readonly Point[], chain: Pick<Chain, 'steps' | 'closed'>): Course[] {
  const spread = spreadOut(points, chain);
  const fits: Course[] = [];
  if (!chain.closed) fits.push({ ...courseOf(points, chain, spread, 2, ENOUGH_FOR_A_LINE), shape: 'line' });
  for (const order of [2, 3]) {
    if (points.length <= order + 1) continue;
    for (const power of STRENGTHS) fits.push(courseOf(points, chain, spread, order, 10 ** power));
  }
  return fits;
}

function spreadOut(points: readonly Point[], { steps, closed }: Pick<Chain, 'steps' | 'closed'>): Spread {
  const slots: number[] = [0];
  for (let k = 1; k < points.length; k++) slots.push(slots[k - 1]! + steps[k - 1]!);
  const round = closed ? slots.at(-1)! + steps.at(-1)! : 0;
  const wrap = closed ? Math.min(WRAP, round) : 0;
  const length = (closed ? round : slots.at(-1)! + 1) + 2 * wrap;
  const spread = {
    xs: new Float64Array(length),
    ys: new Float64Array(length),
    weights: new Float64Array(length),
    slots: slots.map((slot) => slot + wrap),
    round,
  };
  const put = (slot: number, { x, y }: Point): void => {
    if (slot < 0 || slot >= length) return;
    spread.xs[slot] = x;
    spread.ys[slot] = y;
    spread.weights[slot] = 1;
  };
  points.forEach((point, k) => {
    const slot = spread.slots[k]!;
    for (const turn of closed ? [-round, 0, round] : [0]) put(slot + turn, point);
  });
  return spread;
}

function courseOf(
  points: readonly Point[],
  chain: Pick<Chain, 'steps'>,
  { xs, ys, weights, slots, round }: Spread,
  order: number,
  lambda: number,
): Course {
  const smoothed = smoothSequences([xs, ys], weights, order, lambda);
  const [fx, fy] = smoothed.fits as [Float64Array, Float64Array];
  const places = slots.map((slot) => ({ x: fx[slot]!, y: fy[slot]! }));
  let pinned = 0;
  for (const weight of weights) pinned += weight;
  const gaps = chain.steps.flatMap((step, k) => {
    if (step !== 2 || k >= slots.length) return [];
    const slot = slots[k]! + 1;
    return [{ after: k, place: { x: fx[slot]!, y: fy[slot]! } }];
  });
  // A closed chain is laid out more than once round; only its share of the freedom is spent on it.
  const share = round > 0 ? points.length / pinned : 1;
  return {
    shape: 'curve',
    places,
    gaps,
    squares: squaresOf(points, places),
    freedom: 2 * smoothed.freedom * share,
  };
}

function squaresOf(points: readonly Point[], places: readonly Point[]): number {
  let squares = 0;
  points.forEach((point, k) => {
    squares += (point.x - places[k]!.x) ** 2 + (point.y - places[k]!.y) ** 2;
  });
  return squares;
}

/** Pins at even steps on a circle: five parameters, centre, radius, beginning and step; four where it closes. */
function arcCourses(points: readonly Point[], chain: Pick<Chain, 'steps' | 'closed'>): Course[] {
  if (points.length < 5) return [];
  const circle = fitCircle(points);
  if (circle === null) return [];
  const { centre, radius } = circle;
  const slots: number[] = [0];
  const angles = [Math.atan2(points[0]!.y - centre.y, points[0]!.x - centre.x)];
  for (let k = 1; k < points.length; k++) {
    slots.push(slots[k - 1]! + chain.steps[k - 1]!);
    const angle = Math.atan2(points[k]!.y - centre.y, points[k]!.x - centre.x);
    const before = angles[k - 1]!;
    angles.push(angle + 2 * Math.PI * Math.round((before - angle) / (2 * Math.PI)));
  }
  const round = chain.closed ? slots.at(-1)! + chain.steps.at(-1)! : 0;
  const turn = chain.closed ? (2 * Math.PI * Math.sign(angles.at(-1)! - angles[0]!)) / round : null;
  const { start, step } = evenAngles(slots, angles, turn);
  const at = (slot: number): Point => ({
    x: centre.x + radius * Math.cos(start + step * slot),
    y: centre.y + radius * Math.sin(start + step * slot),
  });
  const places = slots.map(at);
  const gaps = chain.steps.flatMap((gap, k) =>
    gap === 2 && k < slots.length ? [{ after: k, place: at(slots[k]! + 1) }] : [],
  );
  return [{ shape: 'arc', places, gaps, squares: squaresOf(points, places), freedom: turn === null ? 5 : 4 }];
}

function evenAngles(
  slots: readonly number[],
  angles: readonly number[],
  fixedStep: number | null,
): { start: number; step: number } {
  const n = slots.length;
  const middle = slots.reduce((sum, slot) => sum + slot, 0) / n;
  const mean = angles.reduce((sum, angle) => sum + angle, 0) / n;
  let [over, under] = [0, 0];
  slots.forEach((slot, k) => {
    over += (slot - middle) * (angles[k]! - mean);
    under += (slot - middle) ** 2;
  });
  const step = fixedStep ?? over / under;
  return { start: mean - step * middle, step };
}
