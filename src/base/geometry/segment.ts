import { distance, dot, type Point, subtract } from './point.ts';

/** How far along the straight step `from` (0) `to` (1) the place on it lies that is nearest to `place`. */
export function nearestShare(place: Point, from: Point, to: Point): number {
  const step = subtract(to, from);
  const size = dot(step, step);
  return size === 0 ? 0 : Math.min(1, Math.max(0, dot(subtract(place, from), step) / size));
}

/** Distance from a place to the straight step between two points, its ends included. */
export function distanceToStep(place: Point, from: Point, to: Point): number {
  const t = nearestShare(place, from, to);
  return distance(place, { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) });
}
