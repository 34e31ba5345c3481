import type { Point } from '#base/geometry/point.ts';

/** A line `y = intercept + slope x` with what it leaves over. */
export interface SlopeFit {
  readonly slope: number;
  readonly intercept: number;
  /** Sum of squared residuals, weighted where the fit is. */
  readonly squares: number;
}

/** Ordinary least squares of y on x: all error in y. Null for fewer than two different x. */
export function regress(points: readonly Point[]): SlopeFit | null {
  const n = points.length;
  let [mx, my] = [0, 0];
  for (const { x, y } of points) {
    mx += x / n;
    my += y / n;
  }
  let [xx, xy] = [0, 0];
  for (const { x, y } of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
  }
  if (n < 2 || !(xx > 0)) return null;
  const slope = xy / xx;
  let squares = 0;
  for (const { x, y } of points) squares += (y - my - slope * (x - mx)) ** 2;
  return { slope, intercept: my - slope * mx, squares };
}

/**
 * The line through points with errors in both coordinates, each with its weight, one over its variance
 * (York, Canadian Journal of Physics 44 (1966); in the unified form of York et al., American Journal of Physics 72
 * (2004), errors uncorrelated). Null where it does not settle.
 */
export function fitWeightedLine(
  points: readonly Point[],
  weightsX: readonly number[],
  weightsY: readonly number[],
): SlopeFit | null {
  let slope = regress(points)?.slope;
  if (slope === undefined) return null;
  for (let round = 0; round < 200; round++) {
    const next: number = yorkSlope(points, weightsX, weightsY, slope);
    if (!Number.isFinite(next)) return null;
    const change = Math.abs(next - slope);
    slope = next;
    if (change <= 1e-15 * Math.abs(slope)) break;
  }
  const { mx, my, w } = yorkMeans(points, weightsX, weightsY, slope);
  const intercept = my - slope * mx;
  let squares = 0;
  points.forEach(({ x, y }, k) => {
    squares += w[k]! * (y - intercept - slope! * x) ** 2;
  });
  return { slope, intercept, squares };
}

function yorkMeans(
  points: readonly Point[],
  weightsX: readonly number[],
  weightsY: readonly number[],
  slope: number,
): { mx: number; my: number; w: number[] } {
  const w = points.map(
    (_, k) => (weightsX[k]! * weightsY[k]!) / (weightsX[k]! + slope * slope * weightsY[k]!),
  );
  const sum = w.reduce((all, value) => all + value, 0);
  let [mx, my] = [0, 0];
  points.forEach(({ x, y }, k) => {
    mx += (w[k]! * x) / sum;
    my += (w[k]! * y) / sum;
  });
  return { mx, my, w };
}

function yorkSlope(
  points: readonly Point[],
  weightsX: readonly number[],
  weightsY: readonly number[],
  slope: number,
): number {
  const { mx, my, w } = yorkMeans(points, weightsX, weightsY, slope);
  let [over, under] = [0, 0];
  points.forEach(({ x, y }, k) => {
    const u = x - mx;
    const v = y - my;
    const beta = w[k]! * (u / weightsY[k]! + (slope * v) / weightsX[k]!);
    over += w[k]! * beta * v;
    under += w[k]! * beta * u;
  });
  return over / under;
}
