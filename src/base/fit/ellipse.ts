import type { Point } from '#base/geometry/point.ts';
import { algebraicCircle } from './circle.ts';
import { solveDense } from './solve.ts';

export interface EllipseFit {
  readonly centre: Point;
  /** Half axes, the longer first. */
  readonly major: number;
  readonly minor: number;
  /** Direction of the longer axis, radians clockwise from x on a sheet whose y runs down, from 0 to pi. */
  readonly angle: number;
  /** Sum of squared distances of the points from the ellipse. */
  readonly squares: number;
}

/**
 * The ellipse of least squared distances (Gander, Golub & Strebel, BIT 34 (1994)): each point has its own foot on the
 * curve, found anew in every round, and damped Gauss-Newton steps better the five parameters. Started from several
 * slightly flattened circles, since the sum has more than one dip. Null for fewer than five points or where nothing fits.
 */
export function fitEllipse(points: readonly Point[]): EllipseFit | null {
  if (points.length < 5) return null;
  const circle = algebraicCircle(points);
  if (circle === null) return null;
  let best: State | null = null;
  for (let k = 0; k < STARTS; k++) {
    const turn = (Math.PI * k) / STARTS;
    const start: Shape = [circle.centre.x, circle.centre.y, 1.15 * circle.radius, 0.85 * circle.radius, turn];
    const state = settle(points, start);
    if (best === null || state.squares < best.squares) best = state;
  }
  return best === null || !Number.isFinite(best.squares) ? null : tidy(best);
}

const STARTS = 6;

/** Centre x and y, half axes, angle. */
type Shape = readonly [number, number, number, number, number];

interface State {
  readonly shape: Shape;
  readonly squares: number;
}

function settle(points: readonly Point[], start: Shape): State {
  let state: State = { shape: start, squares: squaresFrom(points, start) };
  let damping = 1e-2;
  for (let round = 0; round < 300; round++) {
    const next = step(points, state.shape, damping);
    const squares = next === null ? Infinity : squaresFrom(points, next);
    if (next !== null && squares <= state.squares) {
      const gain = state.squares - squares;
      state = { shape: next, squares };
      damping = Math.max(damping / 5, 1e-10);
      if (gain <= 1e-15 * squares) break;
    } else {
      damping *= 6;
      if (damping > 1e10) break;
    }
  }
  return state;
}

/** The parameter of the point of the ellipse nearest to a point in its own axes. */
function footOf(x: number, y: number, p: number, q: number): number {
  let best = 0;
  let least = Infinity;
  for (const start of [Math.atan2(y / q, x / p), Math.atan2(y, x), 0, Math.PI / 2, Math.PI, -Math.PI / 2]) {
    let t = start;
    for (let round = 0; round < 30; round++) {
      const cos = Math.cos(t);
      const sin = Math.sin(t);
      const slope = (p * cos - x) * -p * sin + (q * sin - y) * q * cos;
      const bend = p * p * sin * sin + q * q * cos * cos - (p * cos - x) * p * cos - (q * sin - y) * q * sin;
      const change = slope / (Math.abs(bend) + 1e-300);
      t -= Math.max(-0.5, Math.min(0.5, change));
      if (Math.abs(change) < 1e-15) break;
    }
    const far = (p * Math.cos(t) - x) ** 2 + (q * Math.sin(t) - y) ** 2;
    if (far < least) {
      least = far;
      best = t;
    }
  }
  return best;
}

const inAxes = ([cx, cy, , , angle]: Shape, { x, y }: Point): Point => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: cos * (x - cx) + sin * (y - cy), y: -sin * (x - cx) + cos * (y - cy) };
};

function squaresFrom(points: readonly Point[], shape: Shape): number {
  const [, , p, q] = shape;
  if (!(p > 0) || !(q > 0)) return Infinity;
  let squares = 0;
  for (const point of points) {
    const { x, y } = inAxes(shape, point);
    const t = footOf(x, y, p, q);
    squares += (x - p * Math.cos(t)) ** 2 + (y - q * Math.sin(t)) ** 2;
  }
  return squares;
}

function step(points: readonly Point[], shape: Shape, damping: number): Shape | null {
  const [, , p, q, angle] = shape;
  const matrix = new Float64Array(25);
  const right = new Float64Array(5);
  for (const point of points) {
    const { x, y } = inAxes(shape, point);
    const t = footOf(x, y, p, q);
    const [cos, sin] = [Math.cos(t), Math.sin(t)];
    // Along the normal the foot's own movement does not matter, which leaves five unknowns.
    const size = Math.hypot(q * cos, p * sin);
    const nx = (q * cos) / size;
    const ny = (p * sin) / size;
    const off = (x - p * cos) * nx + (y - q * sin) * ny;
    const row = [
      nx * Math.cos(angle) - ny * Math.sin(angle),
      nx * Math.sin(angle) + ny * Math.cos(angle),
      nx * cos,
      ny * sin,
      -nx * q * sin + ny * p * cos,
    ];
    row.forEach((value, i) => {
      right[i]! += value * off;
      row.forEach((other, j) => {
        matrix[5 * i + j]! += value * other;
      });
    });
  }
  for (let k = 0; k < 5; k++) matrix[6 * k]! *= 1 + damping;
  const change = solveDense(matrix, right);
  if (change === null) return null;
  return shape.map((value, k) => value + change[k]!) as unknown as Shape;
}

function tidy({ shape: [x, y, p, q, angle], squares }: State): EllipseFit {
  const along = p >= q ? angle : angle + Math.PI / 2;
  const turned = ((along % Math.PI) + Math.PI) % Math.PI;
  return { centre: { x, y }, major: Math.max(p, q), minor: Math.min(p, q), angle: turned, squares };
}
