import KDBush from 'kdbush';
import type { Point } from '#base/geometry/point.ts';

/** Indexes all points with kdbush and asks for the neighbours of each: about the least that any check of them costs. */
export function neighbourPass(points: readonly Point[], reach: number): number {
  const tree = new KDBush(points.length);
  for (const { x, y } of points) tree.add(x, y);
  tree.finish();
  return points.reduce((sum, { x, y }) => sum + tree.within(x, y, reach).length, 0);
}
