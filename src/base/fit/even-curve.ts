import type { Point } from '#base/geometry/point.ts';
import { solveDense } from './solve.ts';

export interface EvenCurveFit {
  /** The fitted place of every slot from 0 to the last. */
  readonly places: readonly Point[];
  /** Parameters: beginning (2), step (1) and those of the heading. */
  readonly freedom: number;
  readonly squares: number;
}

/**
 * Pins at even steps along a smooth curve: `P(t) = P(0) + step * sum of (cos h(u), sin h(u)) for u < t`, the heading
 * h a cubic spline of `shape` coefficients (1 a line, 2 an arc, 3 a heading of second degree, 4 and more a uniform
 * cubic B-spline). Least squares by damped Gauss-Newton steps from the headings of `start`, one place a slot.
 *
 * Being true in its own terms it costs far fewer parameters than smoothing both coordinates: a whole arc costs five.
 */
export function fitEvenCurve(
  points: readonly Point[],
  slots: readonly number[],
  start: readonly Point[],
  shape: number,
): EvenCurveFit | null {
  const last = start.length - 1;
  const basis = headingBasis(last, shape);
  let state = firstState(points, slots, start, basis, shape);
  if (state === null) return null;
  let squares = squaresOf(points, slots, placesOf(state, basis, last));
  let damping = 1e-3;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = step(points, slots, state, basis, last, damping);
    const after = next === null ? Infinity : squaresOf(points, slots, placesOf(next, basis, last));
    if (next !== null && after <= squares) {
      const gain = squares - after;
      state = next;
      squares = after;
      damping = Math.max(damping / 8, 1e-9);
      if (gain <= 1e-6 * squares) break;
    } else {
      damping *= 10;
      if (damping > 1e6) break;
    }
  }
  return { places: placesOf(state, basis, last), freedom: shape + 3, squares };
}

const MOST_ROUNDS = 25;

/** Origin x and y, step, then the heading's coefficients. */
type State = Float64Array;

interface Basis {
  readonly shape: number;
  /** For each slot but the last, the first of the coefficients that bear on its heading. */
  readonly first: Int32Array;
  /** And their weights, `width` a slot. */
  readonly weights: Float64Array;
  readonly width: number;
}

function headingBasis(last: number, shape: number): Basis {
  const width = Math.min(shape, 4);
  const first = new Int32Array(last);
  const weights = new Float64Array(last * width);
  for (let u = 0; u < last; u++) {
    const share = last > 1 ? u / (last - 1) : 0;
    if (shape < 4) {
      for (let k = 0; k < shape; k++) weights[u * width + k] = (2 * share - 1) ** k;
      continue;
    }
    const spans = shape - 3;
    const span = Math.min(Math.floor(share * spans), spans - 1);
    const t = share * spans - span;
    first[u] = span;
    weights[u * 4] = (1 - t) ** 3 / 6;
    weights[u * 4 + 1] = (3 * t ** 3 - 6 * t ** 2 + 4) / 6;
    weights[u * 4 + 2] = (-3 * t ** 3 + 3 * t ** 2 + 3 * t + 1) / 6;
    weights[u * 4 + 3] = t ** 3 / 6;
  }
  return { shape, first, weights, width };
}

const headingAt = (state: State, { first, weights, width }: Basis, u: number): number => {
  let heading = 0;
  for (let k = 0; k < width; k++) heading += weights[u * width + k]! * state[3 + first[u]! + k]!;
  return heading;
};

function firstState(
  points: readonly Point[],
  slots: readonly number[],
  start: readonly Point[],
  basis: Basis,
  shape: number,
): State | null {
  const last = start.length - 1;
  const { first, weights, width } = basis;
  const matrix = new Float64Array(shape * shape);
  const right = new Float64Array(shape);
  let before = 0;
  let length = 0;
  for (let u = 0; u < last; u++) {
    const dx = start[u + 1]!.x - start[u]!.x;
    const dy = start[u + 1]!.y - start[u]!.y;
    length += Math.hypot(dx, dy) / last;
    const raw = Math.atan2(dy, dx);
    const heading = raw + 2 * Math.PI * Math.round((before - raw) / (2 * Math.PI));
    before = heading;
    for (let p = 0; p < width; p++) {
      const row = first[u]! + p;
      right[row]! += weights[u * width + p]! * heading;
      for (let q = 0; q < width; q++) {
        matrix[row * shape + first[u]! + q]! += weights[u * width + p]! * weights[u * width + q]!;
      }
    }
  }
  for (let k = 0; k < shape; k++) matrix[k * shape + k]! += 1e-9 * (1 + matrix[k * shape + k]!);
  const coefficients = solveDense(matrix, right);
  if (coefficients === null || !(length > 0)) return null;
  const state = new Float64Array(shape + 3);
  state[2] = length;
  state.set(coefficients, 3);
  // The best beginning for these headings is the one that leaves no mean offset.
  const places = placesOf(state, basis, last);
  let [x, y] = [0, 0];
  points.forEach((point, k) => {
    x += (point.x - places[slots[k]!]!.x) / points.length;
    y += (point.y - places[slots[k]!]!.y) / points.length;
  });
  state[0] = x;
  state[1] = y;
  return state;
}

function placesOf(state: State, basis: Basis, last: number): Point[] {
  let x = state[0]!;
  let y = state[1]!;
  const places: Point[] = [{ x, y }];
  for (let u = 0; u < last; u++) {
    const heading = headingAt(state, basis, u);
    x += state[2]! * Math.cos(heading);
    y += state[2]! * Math.sin(heading);
    places.push({ x, y });
  }
  return places;
}

function squaresOf(points: readonly Point[], slots: readonly number[], places: readonly Point[]): number {
  let squares = 0;
  points.forEach(({ x, y }, k) => {
    const place = places[slots[k]!]!;
    squares += (x - place.x) ** 2 + (y - place.y) ** 2;
  });
  return squares;
}

function step(
  points: readonly Point[],
  slots: readonly number[],
  state: State,
  basis: Basis,
  last: number,
  damping: number,
): State | null {
  const size = state.length;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  // Derivatives of the running place; they change slot by slot, so one pass serves all points.
  const byX = new Float64Array(size);
  const byY = new Float64Array(size);
  byX[0] = 1;
  byY[1] = 1;
  const length = state[2]!;
  let x = state[0]!;
  let y = state[1]!;
  let reach = 3;
  let k = 0;
  for (let slot = 0; slot <= last && k < points.length; slot++) {
    if (slots[k] === slot) {
      const rx = points[k]!.x - x;
      const ry = points[k]!.y - y;
      for (let p = 0; p < reach; p++) {
        const px = byX[p]!;
        const py = byY[p]!;
        right[p]! += px * rx + py * ry;
        for (let q = 0; q <= p; q++) matrix[p * size + q]! += px * byX[q]! + py * byY[q]!;
      }
      k++;
    }
    if (slot === last) break;
    const heading = headingAt(state, basis, slot);
    const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
    x += length * cos;
    y += length * sin;
    byX[2]! += cos;
    byY[2]! += sin;
    for (let w = 0; w < basis.width; w++) {
      const p = 3 + basis.first[slot]! + w;
      const weight = basis.weights[slot * basis.width + w]! * length;
      byX[p]! -= weight * sin;
      byY[p]! += weight * cos;
      if (p >= reach) reach = p + 1;
    }
  }
  for (let p = 0; p < size; p++) {
    for (let q = 0; q < p; q++) matrix[q * size + p] = matrix[p * size + q]!;
    matrix[p * size + p]! *= 1 + damping;
  }
  const change = solveDense(matrix, right);
  return change === null ? null : state.map((value, p) => value + change[p]!);
}
