import { distance, type Point } from '#base/geometry/point.ts';
import { shortestTree } from './tree.ts';

/**
 * An order in which the eye can follow the points: along the shortest tree that joins them, from the point nearest to
 * `start` (from the outermost one where there is none), taking short side branches before going on. Every point comes
 * once.
 */
export function walk(points: readonly Point[], start: Point | null): number[] {
  if (points.length === 0) return [];
  const branches: number[][] = points.map(() => []);
  for (const { from, to } of shortestTree(points)) {
    branches[from]!.push(to);
    branches[to]!.push(from);
  }
  const order: number[] = [];
  const visited = new Uint8Array(points.length);
  const first = start === null ? outermost(points) : nearestTo(start, points);
  // Coinciding points are in no tree: they follow at the end, in their own order.
  for (const root of [first, ...points.keys()]) {
    if (visited[root] === 1) continue;
    const { sequence, size } = visitFrom(root, branches, visited);
    for (const point of preorder(root, sequence, size, branches)) order.push(point);
  }
  return order;
}

/** Where each point is met from the root on, and how many points lie on it and beyond. */
function visitFrom(root: number, branches: readonly number[][], visited: Uint8Array) {
  const sequence: number[] = [root];
  const parent = new Map<number, number>();
  visited[root] = 1;
  for (let at = 0; at < sequence.length; at++) {
    const here = sequence[at]!;
    for (const next of branches[here]!) {
      if (visited[next] === 1) continue;
      visited[next] = 1;
      parent.set(next, here);
      sequence.push(next);
    }
  }
  const size = new Map<number, number>();
  for (const point of sequence.toReversed()) {
    const own = (size.get(point) ?? 0) + 1;
    size.set(point, own);
    const up = parent.get(point);
    if (up !== undefined) size.set(up, (size.get(up) ?? 0) + own);
  }
  return { sequence, size };
}

function preorder(
  root: number,
  sequence: readonly number[],
  size: ReadonlyMap<number, number>,
  branches: readonly number[][],
): number[] {
  const order: number[] = [];
  const seen = new Set<number>();
  const waiting = [root];
  while (order.length < sequence.length) {
    const here = waiting.pop()!;
    if (seen.has(here)) continue;
    seen.add(here);
    order.push(here);
    const onward = branches[here]!.filter((next) => !seen.has(next));
    // The largest goes in first, so that it comes off the stack last.
    onward.sort((one, other) => size.get(other)! - size.get(one)! || one - other);
    waiting.push(...onward);
  }
  return order;
}

const nearestTo = (place: Point, points: readonly Point[]): number =>
  leastBy(points, (point) => distance(point, place));

function outermost(points: readonly Point[]): number {
  const middle = middleOf(points);
  return leastBy(points, (point) => -distance(point, middle));
}

/** The centre of gravity of one or more points. */
export function middleOf(points: readonly Point[]): Point {
  let [x, y] = [0, 0];
  for (const point of points) {
    x += point.x / points.length;
    y += point.y / points.length;
  }
  return { x, y };
}

function leastBy(points: readonly Point[], measure: (point: Point) => number): number {
  let best = 0;
  for (const at of points.keys()) if (measure(points[at]!) < measure(points[best]!)) best = at;
  return best;
}
