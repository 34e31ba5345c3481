import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';

/** Holes nearer to each other than this are one hole, mm: burnt twice, it would only come out larger. */
export const COINCIDENT = 0.01;

/** Indices of the points that stay: of those that coincide, the first. */
export function withoutCoincident(points: readonly Point[]): number[] {
  const index = new PointIndex(points);
  const gone = new Uint8Array(points.length);
  return points.flatMap((point, k) => {
    if (gone[k]) return [];
    for (const other of index.within(point, COINCIDENT)) if (other > k) gone[other] = 1;
    return [k];
  });
}
