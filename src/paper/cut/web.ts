import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';

/** The card left standing between two holes, by index, mm; nothing or less where they run into each other. */
export interface Web {
  readonly holes: readonly [number, number];
  readonly card: number;
}

/**
 * The least card between two holes, mm: the card's own thickness and never under 0.5 mm (published advice of a cutting
 * service, cutlasercut.com: widths not less than the thickness, cuts closer than 0.5 mm may burn through).
 */
export const leastWeb = (cardThickness: number): number => Math.max(cardThickness, 0.5);

/** A hole finer than this is hard to cut clean, mm (common practice, no source). */
export const leastHole = (cardThickness: number): number => cardThickness / 2;

/** No pattern has so many thin webs; where a file claims more, no more are looked for. */
export const MOST_WEBS = 100_000;

/** Webs under `least`, the thinnest first. `burnt` is a hole's diameter as it comes out: as drawn, and one kerf. */
export function thinWebs(places: readonly Point[], burnt: number, least: number): Web[] {
  const index = new PointIndex(places);
  const thin: Web[] = [];
  for (const [k, place] of places.entries()) {
    if (thin.length >= MOST_WEBS) break;
    for (const other of index.within(place, burnt + least)) {
      if (other <= k) continue;
      const card = distance(place, places[other]!) - burnt;
      if (card < least - NOISE) thin.push({ holes: [k, other], card });
    }
  }
  return thin.sort((one, other) => one.card - other.card || one.holes[0] - other.holes[0]);
}

/** The distance from a hole to its nearest neighbour that half of the holes keep, mm; at most `most`. */
export function usualSpacing(places: readonly Point[], most: number): number {
  const index = new PointIndex(places);
  const nearest = places.map((_, k) => nearestTo(index, k, most)).sort((one, other) => one - other);
  return nearest[Math.floor(nearest.length / 2)] ?? most;
}

/** Looks further and further out, so that a crowd of holes costs no more than a few of them. */
function nearestTo(index: PointIndex, k: number, most: number): number {
  for (let reach = most / 256; reach < most; reach *= 2) {
    const nearest = index.nearestTo(k, reach);
    if (nearest < reach) return nearest;
  }
  return index.nearestTo(k, most);
}

/** Places in files carry 0.001 mm, so that a web of exactly the least may seem to be a hair less. */
const NOISE = 0.0015;
