import type { Point } from '#base/geometry/point.ts';
import { greedyTour, tourLength } from './greedy.ts';
import { nearestOthers } from './neighbours.ts';
import { placesOf } from './places.ts';
import { shorten } from './shorten.ts';
import { Tour } from './tour.ts';

/** A closed tour: every hole once, by index, and back to the first. */
export interface ClosedTour {
  readonly order: readonly number[];
  /** With the way back, in the unit of the holes. */
  readonly length: number;
}

/**
 * As short a closed tour over the holes as can be found in little time: on real drillings of a few hundred holes about
 * 1 % over the least that any tour can have (docs/route.md). Same holes, same tour; about n log n.
 */
export function shortestTour(holes: readonly Point[]): ClosedTour {
  if (holes.length === 0) return { order: [], length: 0 };
  const places = placesOf(holes);
  const neighbours = nearestOthers(places.tree, NEIGHBOURS);
  const tour = new Tour(greedyTour(places, neighbours));
  if (places.count > 3) shorten(tour, places, neighbours, shakesFor(places.count));
  const order = tour.from(0);
  return {
    order: Array.from(order).flatMap((place) => places.holes[place]!),
    length: tourLength(order, places.xy),
  };
}

/** Between six and ten it makes no difference that stands out from chance. */
const NEIGHBOURS = 8;

/** Few holes are shaken more often: there it costs nothing that anyone would notice. */
const shakesFor = (count: number): number => Math.max(0.6 * count, Math.min(50 * count, 6_000));
