import KDBush from 'kdbush';
import { distance, type Point } from '#base/geometry/point.ts';

/** Answers what stands near a place, as indices into the places it was made from. */
export interface Neighbours {
  /** In no order. */
  readonly within: (place: Point, reach: number) => number[];
  /** The nearest one within reach; the lower index where two are as near. */
  readonly nearest: (place: Point, reach: number) => number | null;
}

export function neighboursOf(places: readonly Point[]): Neighbours {
  const tree = new KDBush(places.length);
  for (const { x, y } of places) tree.add(x, y);
  tree.finish();
  const within = ({ x, y }: Point, reach: number) => tree.within(x, y, reach);
  return {
    within,
    nearest: (place, reach) => {
      let best: number | null = null;
      let bestDistance = Number.POSITIVE_INFINITY;
      for (const index of within(place, reach)) {
        const away = distance(places[index]!, place);
        if (away > bestDistance || (away === bestDistance && index > (best ?? -1))) continue;
        best = index;
        bestDistance = away;
      }
      return best;
    },
  };
}

/**
 * Groups places that stand together: each place joins the first earlier leader within reach, else leads itself. Leaders
 * are further apart than the reach, so that each place is met a few times at most, however many lie on one spot. The
 * leader comes first in its group; groups come in the order of their leaders.
 */
export function groupsWithin(places: readonly Point[], reach: number): number[][] {
  const neighbours = neighboursOf(places);
  const joined = new Uint8Array(places.length);
  return places.flatMap((place, leader) => {
    if (joined[leader] === 1) return [];
    const group = neighbours.within(place, reach).filter((at) => at > leader && joined[at] === 0);
    for (const at of group) joined[at] = 1;
    return [[leader, ...group.sort((one, other) => one - other)]];
  });
}
