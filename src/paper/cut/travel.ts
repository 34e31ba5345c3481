import { distance, type Point } from '#base/geometry/point.ts';

/** How far the tool moves from hole to hole, mm, from the first hole to the last. */
export const travelOf = (holes: readonly Point[]): number =>
  holes.reduce((sum, hole, k) => (k === 0 ? 0 : sum + distance(holes[k - 1]!, hole)), 0);
