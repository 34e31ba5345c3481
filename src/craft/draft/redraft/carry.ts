import { add, type Point, subtract } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { Pin } from '#pattern/pattern.ts';

/** Where a free place goes when a pattern is drafted anew. */
export type Carry = (place: Point) => Point;

/** Places of no pin keep their offset from the nearest pin that both drafts have. */
export function carryBetween(old: readonly Pin[], fresh: ReadonlyMap<string, Pin>): Carry {
  const shared = old.filter(({ id }) => fresh.has(id));
  const index = new PointIndex(shared);
  return (place) => {
    if (shared.length === 0) return place;
    for (let reach = 1; ; reach *= 2) {
      const nearest = index.nearest(place, reach);
      if (nearest === null) continue;
      const pin = shared[nearest]!;
      return add(place, subtract(fresh.get(pin.id)!, pin));
    }
  };
}
