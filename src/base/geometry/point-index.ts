import KDBush from 'kdbush';
import type { Box } from './box.ts';
import { distance, type Point } from './point.ts';

/** Finds which of many points lie near a place, by their index. */
export class PointIndex {
  readonly #points: readonly Point[];
  readonly #tree: KDBush;

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

  /** How far the nearest other point lies from point `index`, or `most` where none is nearer than that. */
  nearestTo(index: number, most: number): number {
    const place = this.#points[index]!;
    let nearest = most;
    for (const other of this.within(place, most)) {
      if (other !== index) nearest = Math.min(nearest, distance(place, this.#points[other]!));
    }
    return nearest;
  }
}
