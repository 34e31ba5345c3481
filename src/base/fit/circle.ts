import type { Point } from '#base/geometry/point.ts';

export interface CircleFit {
  readonly centre: Point;
  readonly radius: number;
  /** Sum of squared distances of the points from the circle. */
  readonly squares: number;
}

/**
 * The circle that makes `sum (|p|^2 + D x + E y + F)^2` least (Kasa, IEEE Trans. Instrum. Meas. 25 (1976)):
 * quick, but it shrinks short arcs. Null for fewer than three points or points on one line.
 */
export function algebraicCircle(points: readonly Point[]): CircleFit | null {
  const n = points.length;
  if (n < 3) return null;
  const middle = { x: 0, y: 0 };
  for (const { x, y } of points) {
    middle.x += x / n;
    middle.y += y / n;
  }
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const point of points) {
    const x = point.x - middle.x;
    const y = point.y - middle.y;
    const z = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const det = xx * yy - xy * xy;
  if (!(det > 1e-12 * (xx + yy) ** 2)) return null;
  const u = (xz * yy - yz * xy) / (2 * det);
  const v = (yz * xx - xz * xy) / (2 * det);
  const centre = { x: middle.x + u, y: middle.y + v };
  const radius = Math.sqrt(u * u + v * v + (xx + yy) / n);
  return { centre, radius, squares: squaresFrom(points, centre, radius) };
}

/**
 * The circle of least squared distances (Gander, Golub & Strebel, BIT 34 (1994)), by damped Gauss-Newton steps from
 * the algebraic one. Null as above.
 */
export function fitCircle(points: readonly Point[]): CircleFit | null {
  let fit = algebraicCircle(points);
  if (fit === null) return null;
  let damping = 1e-4;
  for (let round = 0; round < 200; round++) {
    const next = newtonStep(points, fit, damping);
    if (next === null) break;
    if (next.squares <= fit.squares) {
      const gain = fit.squares - next.squares;
      fit = next;
      damping = Math.max(damping / 10, 1e-12);
      if (gain <= 1e-14 * fit.squares) break;
    } else {
      damping *= 10;
      if (damping > 1e8) break;
    }
  }
  return fit;
}

function squaresFrom(points: readonly Point[], centre: Point, radius: number): number {
  let squares = 0;
  for (const { x, y } of points) squares += (Math.hypot(x - centre.x, y - centre.y) - radius) ** 2;
  return squares;
}

function newtonStep(
  points: readonly Point[],
  { centre, radius }: CircleFit,
  damping: number,
): CircleFit | null {
  // The radius that suits a centre best is the mean distance, so only the centre needs steps.
  const n = points.length;
  let [mx, my, mean] = [0, 0, 0];
  const rows = points.map(({ x, y }) => {
    const far = Math.hypot(x - centre.x, y - centre.y) || Number.MIN_VALUE;
    const row = { ux: (centre.x - x) / far, uy: (centre.y - y) / far, far };
    mx += row.ux / n;
    my += row.uy / n;
    mean += far / n;
    return row;
  });
  let [xx, xy, yy, gx, gy] = [0, 0, 0, 0, 0];
  for (const { ux, uy, far } of rows) {
    const jx = ux - mx;
    const jy = uy - my;
    const off = far - mean;
    xx += jx * jx;
    xy += jx * jy;
    yy += jy * jy;
    gx += jx * off;
    gy += jy * off;
  }
  const ax = xx * (1 + damping);
  const ay = yy * (1 + damping);
  const det = ax * ay - xy * xy;
  if (!(Math.abs(det) > 0)) return null;
  const next = { x: centre.x - (gx * ay - gy * xy) / det, y: centre.y - (gy * ax - gx * xy) / det };
  let far = 0;
  for (const { x, y } of points) far += Math.hypot(x - next.x, y - next.y) / n;
  if (!Number.isFinite(far + radius)) return null;
  return { centre: next, radius: far, squares: squaresFrom(points, next, far) };
}
