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
