import KDBush from 'kdbush';
import { type Box, boxOf, heightOf, widthOf } from './box.ts';
import { distance, type Point } from './point.ts';

/** Finds which of many points lie near a place, by their index. */
export class PointIndex {
  readonly #points: readonly Point[];
  readonly #tree: KDBush;
  #reach: number | null = null;

  constructor(points: readonly Point[]) {
    this.#points = points;
    this.#tree = new KDBush(points.length);
    for (const { x, y } of points) this.#tree.add(x, y);
    this.#tree.finish();
  }

  inBox({ left, top, right, bottom }: Box): number[] {
    return this.#points.length === 0 ? [] : this.#tree.range(left, top, right, bottom);
  }

  within(place: Point, radius: number): number[] {
    return this.#points.length === 0 ? [] : this.#tree.within(place.x, place.y, radius);
  }

  /** The point nearest to a place, of those within `radius`; the first of several as near. Null where there is none. */
  nearest(place: Point, radius: number): number | null {
    let best: number | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const index of this.within(place, radius)) {
      const away = distance(place, this.#points[index]!);
      if (away > least || (away === least && best !== null && index > best)) continue;
      best = index;
      least = away;
    }
    return best;
  }

  /** How far the nearest other point lies from point `index`, or `most` where none is nearer than that. */
  nearestTo(index: number, most: number): number {
    const place = this.#points[index]!;
    // Outward from near by: within `most` may lie all the others.
    for (let radius = Math.min(most, this.#usualReach()); ; radius = Math.min(most, 4 * radius)) {
      let nearest = Infinity;
      for (const other of this.within(place, radius)) {
        if (other !== index) nearest = Math.min(nearest, distance(place, this.#points[other]!));
      }
      if (nearest <= radius || radius >= most) return Math.min(nearest, most);
    }
  }

  /** About as far as from one point to the next, or somewhat more. */
  #usualReach(): number {
    if (this.#reach === null) {
      const box = boxOf(this.#points);
      this.#reach = Math.hypot(widthOf(box), heightOf(box)) / Math.sqrt(this.#points.length) || Infinity;
    }
    return this.#reach;
  }
}
