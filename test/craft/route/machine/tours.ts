import { distance, type Point } from '#base/geometry/point.ts';

/** The length of a closed tour, counted in the plainest way. */
export const lengthOf = (order: readonly number[], holes: readonly Point[]): number =>
  order.reduce((sum, hole, at) => sum + distance(holes[hole]!, holes[order[(at + 1) % order.length]!]!), 0);
