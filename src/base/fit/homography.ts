import { Matrix, solve } from 'ml-matrix';
import type { Point } from '#base/geometry/point.ts';

/** A projective map, row by row: `x' = (h0 x + h1 y + h2) / (h6 x + h7 y + h8)`, and y' by the second row. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

export function applyHomography(h: Homography, { x, y }: Point): Point {
  const depth = h[6] * x + h[7] * y + h[8];
  return { x: (h[0] * x + h[1] * y + h[2]) / depth, y: (h[3] * x + h[4] * y + h[5]) / depth };
}

/**
 * The projective map that takes four points or more on to others: exact for four, of least algebraic error for more
 * (the normalised direct linear transform: Hartley, IEEE PAMI 19 (1997)), with h8 = 1. Null where three of four lie on
 * one line or the points say too little.
 */
export function fitHomography(from: readonly Point[], onto: readonly Point[]): Homography | null {
  if (from.length < 4 || onto.length !== from.length) return null;
  const p = normalised(from);
  const q = normalised(onto);
  if (p === null || q === null) return null;
  const rows: number[][] = [];
  const right: number[][] = [];
  p.points.forEach(({ x, y }, k) => {
    const { x: u, y: v } = q.points[k]!;
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]);
    right.push([u], [v]);
  });
  let solution: number[];
  try {
    solution = solve(new Matrix(rows), new Matrix(right)).to1DArray();
  } catch {
    // The solver throws where the rows do not determine the map; that is an answer here, not an error.
    return null;
  }
  if (solution.some((value) => !Number.isFinite(value))) return null;
  const normal = [...solution, 1];
  const whole = multiply(multiply(q.back, normal), p.into);
  const last = whole[8]!;
  if (!(Math.abs(last) > 1e-12)) return null;
  return whole.map((value) => value / last) as unknown as Homography;
}

/** The points about their middle with mean distance sqrt 2 from it, the map into that, and the map back. */
function normalised(points: readonly Point[]): { points: Point[]; into: number[]; back: number[] } | null {
  const n = points.length;
  let [mx, my] = [0, 0];
  for (const { x, y } of points) {
    mx += x / n;
    my += y / n;
  }
  let far = 0;
  for (const { x, y } of points) far += Math.hypot(x - mx, y - my) / n;
  if (!(far > 0) || !Number.isFinite(far)) return null;
  const s = Math.SQRT2 / far;
  return {
    points: points.map(({ x, y }) => ({ x: s * (x - mx), y: s * (y - my) })),
    into: [s, 0, -s * mx, 0, s, -s * my, 0, 0, 1],
    back: [1 / s, 0, mx, 0, 1 / s, my, 0, 0, 1],
  };
}

function multiply(a: readonly number[], b: readonly number[]): number[] {
  return Array.from({ length: 9 }, (_, at) => {
    const row = 3 * Math.floor(at / 3);
    const column = at % 3;
    return a[row]! * b[column]! + a[row + 1]! * b[3 + column]! + a[row + 2]! * b[6 + column]!;
  });
}
