import Delaunator from 'delaunator';
import { cross, distance, type Point, subtract } from '#base/geometry/point.ts';

/** A line between two points, by index. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly length: number;
}

/**
 * The links of the Delaunay triangulation, each once, `from < to`; along the line where all points lie on one. A point
 * that coincides with another has none.
 */
export function neighbourLinks(points: readonly Point[]): Link[] {
  const { triangles, halfedges, hull } = triangulate(points);
  const links: Link[] = [];
  const add = (one: number, other: number) =>
    links.push({
      from: Math.min(one, other),
      to: Math.max(one, other),
      length: distance(points[one]!, points[other]!),
    });
  if (triangles.length === 0) for (let at = 1; at < hull.length; at++) add(hull[at - 1]!, hull[at]!);
  for (let edge = 0; edge < triangles.length; edge++)
    if (halfedges[edge]! < edge) add(triangles[edge]!, triangles[nextEdge(edge)]!);
  return links;
}

/** The median distance from a point to its nearest neighbour; 0 where no point has one. */
export function stepBetween(points: readonly Point[]): number {
  const nearest = new Float64Array(points.length).fill(Number.POSITIVE_INFINITY);
  for (const { from, to, length } of neighbourLinks(points)) {
    for (const point of [from, to]) nearest[point] = Math.min(nearest[point]!, length);
  }
  const steps = nearest.filter(Number.isFinite).sort();
  return steps[steps.length >> 1] ?? 0;
}

/**
 * The points that one meets going round the outside, where neighbours along it stand about a `step` apart. From the
 * convex hull inwards, every triangle is taken off whose outer side spans a wide bay, or whose corner across lies so
 * near that side that only an unsteady hand put it behind. Both limits are our own choice.
 */
export function outsidePoints(points: readonly Point[], step: number): Set<number> {
  const { triangles, halfedges, hull } = triangulate(points);
  const outside = new Set<number>(hull);
  const gone = new Uint8Array(triangles.length / 3);
  const sides: number[] = [];
  for (let edge = 0; edge < triangles.length; edge++) if (halfedges[edge] === -1) sides.push(edge);

  for (let side = sides.pop(); side !== undefined; side = sides.pop()) {
    const triangle = Math.floor(side / 3);
    const [from, to] = [triangles[side]!, triangles[nextEdge(side)]!];
    outside.add(from).add(to);
    const across = triangles[nextEdge(nextEdge(side))]!;
    if (gone[triangle] === 1) continue;
    const span = distance(points[from]!, points[to]!);
    const depth = (2 * areaOf(points[from]!, points[to]!, points[across]!)) / span;
    if (span <= BAY * step && depth > FLAT * step) continue;
    gone[triangle] = 1;
    for (const edge of [nextEdge(side), nextEdge(nextEdge(side))]) {
      const opposite = halfedges[edge]!;
      if (opposite === -1 || gone[Math.floor(opposite / 3)] === 1) continue;
      sides.push(opposite);
    }
    // The corner across has come to the outside even where both its triangles were already gone.
    outside.add(across);
  }
  return outside;
}

const BAY = 3;
const FLAT = 0.3;

const areaOf = (a: Point, b: Point, c: Point): number => Math.abs(cross(subtract(b, a), subtract(c, a))) / 2;

const nextEdge = (edge: number): number => (edge % 3 === 2 ? edge - 2 : edge + 1);

function triangulate(points: readonly Point[]) {
  const flat = new Float64Array(points.length * 2);
  for (const [at, { x, y }] of points.entries()) {
    flat[2 * at] = x;
    flat[2 * at + 1] = y;
  }
  return new Delaunator(flat);
}
