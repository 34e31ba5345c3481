import Delaunator from 'delaunator';
import type { PixelPoint } from '#base/geometry/point.ts';

/** Two holes by their index, the lower one first. */
export type Pair = readonly [number, number];

/** Every pair of Delaunay neighbours; along the line where all holes lie on one. */
export function neighbourPairs(holes: readonly PixelPoint[]): Pair[] {
  const { triangles, halfedges, hull } = new Delaunator(holes.flatMap((hole) => [hole.column, hole.row]));
  const pair = (a: number, b: number): Pair => (a < b ? [a, b] : [b, a]);
  if (triangles.length === 0) return [...hull.subarray(1)].map((hole, k) => pair(hull[k]!, hole));
  const pairs: Pair[] = [];
  for (let edge = 0; edge < triangles.length; edge++) {
    if (halfedges[edge]! > edge) continue;
    pairs.push(pair(triangles[edge]!, triangles[edge % 3 === 2 ? edge - 2 : edge + 1]!));
  }
  return pairs;
}

/** Pairs that are no neighbours and share one: long lines of a band lead past the next dot. */
export function* pairsOnceRemoved(count: number, neighbours: readonly Pair[]): Generator<Pair> {
  const around: number[][] = Array.from({ length: count }, () => []);
  for (const [a, b] of neighbours) {
    around[a]!.push(b);
    around[b]!.push(a);
  }
  for (const ring of around) {
    for (const a of ring) for (const b of ring) if (a < b) yield [a, b];
  }
}
