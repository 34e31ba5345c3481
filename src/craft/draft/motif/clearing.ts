import { type Box, boxHolds, growBox } from '#base/geometry/box.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { distanceToStep } from '#base/geometry/segment.ts';
import type { Shape } from './shape.ts';

/** Asks where places lie by an outline. Cost of a question does not grow with the outline's length. */
export class Clearing {
  readonly #shape: Shape;
  readonly #reach: number;
  readonly #box: Box;
  readonly #index: PointIndex;
  readonly #longest: number;
  /** Where each level line that was asked about crosses the outline, from the left. */
  readonly #crossings = new Map<number, readonly number[]>();

  /** `reach` is as far as distances are told, mm. */
  constructor(shape: Shape, reach: number) {
    this.#shape = shape;
    this.#reach = reach;
    this.#box = growBox(shape.box, reach);
    this.#index = new PointIndex(shape.chain);
    this.#longest = shape.chain.reduce(
      (longest, point, k) => Math.max(longest, distance(point, this.#next(k))),
      0,
    );
  }

  /** On which side of the outline a place lies, 'near' where it is no farther from it than the clearance. */
  sideOf(place: Point, clearance: number): 'near' | 'inside' | 'outside' {
    if (!boxHolds(this.#box, place)) return 'outside';
    if (this.distanceTo(place) < clearance) return 'near';
    return this.#isInside(place) ? 'inside' : 'outside';
  }

  /** How far a place is from the outline, or infinity where that is farther than the reach. */
  distanceTo(place: Point): number {
    let nearest = Infinity;
    for (const k of this.#index.within(place, this.#reach + this.#longest)) {
      nearest = Math.min(nearest, distanceToStep(place, this.#shape.chain[k]!, this.#next(k)));
    }
    return nearest <= this.#reach ? nearest : Infinity;
  }

  #next(k: number): Point {
    const { chain } = this.#shape;
    return chain[(k + 1) % chain.length]!;
  }

  /** Even-odd rule; the pins of a row lie on one level line, so that it is crossed with the outline only once. */
  #isInside({ x, y }: Point): boolean {
    let crossings = this.#crossings.get(y);
    if (crossings === undefined) {
      crossings = crossingsAt(this.#shape.chain, y);
      this.#crossings.set(y, crossings);
    }
    return crossings.filter((crossing) => crossing < x).length % 2 === 1;
  }
}

function crossingsAt(chain: readonly Point[], y: number): number[] {
  return chain.flatMap((from, k) => {
    const to = chain[(k + 1) % chain.length]!;
    if (from.y > y === to.y > y) return [];
    return from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x);
  });
}
