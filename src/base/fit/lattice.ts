import type { Point } from '#base/geometry/point.ts';
import { cross, dot, length, subtract } from '#base/geometry/point.ts';

/** Nodes at `origin + i a + j b` for whole numbers i and j. */
export interface LatticeFrame {
  readonly origin: Point;
  readonly a: Point;
  readonly b: Point;
}

export interface LatticeFit extends LatticeFrame {
  /** Root mean square distance of the points from their nodes. */
  readonly rms: number;
}

/**
 * Running sums for the least-squares lattice through points whose nodes are known: adding or taking away a point
 * costs the same however many there are. A lattice is an affine map of the whole-number grid, so the fit is linear.
 */
export interface LatticeSums {
  readonly values: Float64Array;
}

export const emptyLatticeSums = (): LatticeSums => ({ values: new Float64Array(12) });

/** Adds a point at node (i, j), or takes it away with `weight` -1. */
export function addToLattice(
  { values: s }: LatticeSums,
  i: number,
  j: number,
  { x, y }: Point,
  weight = 1,
): void {
  s[0]! += weight;
  s[1]! += weight * i;
  s[2]! += weight * j;
  s[3]! += weight * i * i;
  s[4]! += weight * i * j;
  s[5]! += weight * j * j;
  s[6]! += weight * x;
  s[7]! += weight * x * i;
  s[8]! += weight * x * j;
  s[9]! += weight * y;
  s[10]! += weight * y * i;
  s[11]! += weight * y * j;
}

/** The least-squares lattice of the sums, or null where the nodes lie on one line or are fewer than three. */
export function latticeOfSums({ values: s }: LatticeSums): LatticeFrame | null {
  const n = s[0]!;
  if (n < 2.5) return null;
  const mi = s[1]! / n;
  const mj = s[2]! / n;
  const ii = s[3]! - n * mi * mi;
  const ij = s[4]! - n * mi * mj;
  const jj = s[5]! - n * mj * mj;
  const det = ii * jj - ij * ij;
  if (!(det > 1e-9 * (ii + jj) ** 2)) return null;
  const along = (sum: number, sumI: number, sumJ: number): [number, number, number] => {
    const mean = sum / n;
    const pi = sumI - mi * sum;
    const pj = sumJ - mj * sum;
    const perI = (pi * jj - pj * ij) / det;
    const perJ = (pj * ii - pi * ij) / det;
    return [mean - perI * mi - perJ * mj, perI, perJ];
  };
  const [ox, ax, bx] = along(s[6]!, s[7]!, s[8]!);
  const [oy, ay, by] = along(s[9]!, s[10]!, s[11]!);
  return { origin: { x: ox, y: oy }, a: { x: ax, y: ay }, b: { x: bx, y: by } };
}

/** Fits the lattice whose node `nodes[k]` is nearest to `points[k]` in the least-squares sense; null as above. */
export function fitLattice(
  points: readonly Point[],
  nodes: readonly (readonly [number, number])[],
): LatticeFit | null {
  if (points.length === 0) return null;
  // Sums round the first point keep the arithmetic exact far from the sheet's origin.
  const base = points[0]!;
  const [i0, j0] = nodes[0]!;
  const sums = emptyLatticeSums();
  points.forEach((point, k) => {
    addToLattice(sums, nodes[k]![0] - i0, nodes[k]![1] - j0, subtract(point, base));
  });
  const frame = latticeOfSums(sums);
  if (frame === null) return null;
  const { a, b } = frame;
  const origin = {
    x: base.x + frame.origin.x - i0 * a.x - j0 * b.x,
    y: base.y + frame.origin.y - i0 * a.y - j0 * b.y,
  };
  let squares = 0;
  points.forEach((point, k) => {
    const node = latticeNode({ origin, a, b }, nodes[k]![0], nodes[k]![1]);
    squares += (node.x - point.x) ** 2 + (node.y - point.y) ** 2;
  });
  return { origin, a, b, rms: Math.sqrt(squares / points.length) };
}

export const latticeNode = ({ origin, a, b }: LatticeFrame, i: number, j: number): Point => ({
  x: origin.x + i * a.x + j * b.x,
  y: origin.y + i * a.y + j * b.y,
});

/** Where a point stands counted in steps of the lattice: whole numbers at a node. */
export function latticePlace({ origin, a, b }: LatticeFrame, point: Point): { i: number; j: number } {
  const det = cross(a, b);
  const out = subtract(point, origin);
  return { i: cross(out, b) / det, j: cross(a, out) / det };
}

/** Area of one cell, square millimetres: |a| |b| sin(angle between). */
export const cellArea = ({ a, b }: Pick<LatticeFrame, 'a' | 'b'>): number => Math.abs(cross(a, b));

/**
 * The same lattice with its two shortest steps, at 60 to 90 degrees to each other (Lagrange-Gauss reduction).
 * Returns the steps only: node numbers change with them.
 */
export function shortestSteps(a: Point, b: Point): { a: Point; b: Point } {
  let short = a;
  let long = b;
  for (let round = 0; round < 100; round++) {
    if (length(long) < length(short)) [short, long] = [long, short];
    const times = Math.round(dot(short, long) / dot(short, short));
    if (times === 0 || !Number.isFinite(times)) break;
    long = { x: long.x - times * short.x, y: long.y - times * short.y };
  }
  return dot(short, long) < 0 ? { a: short, b: { x: -long.x, y: -long.y } } : { a: short, b: long };
}
