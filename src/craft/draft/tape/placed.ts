import { distance, type Point } from '#base/geometry/point.ts';

/** Pins laid so far, found again by place; squares of one size each hold those that lie in them. */
export class Placed {
  readonly #size: number;
  readonly #squares = new Map<string, { readonly id: string; readonly place: Point }[]>();

  /** `reach` is the farthest that will be looked, mm. */
  constructor(reach: number) {
    this.#size = reach;
  }

  add(id: string, place: Point): void {
    const key = this.#keyOf(place, 0, 0);
    const square = this.#squares.get(key);
    if (square) square.push({ id, place });
    else this.#squares.set(key, [{ id, place }]);
  }

  /** All pins laid so far. */
  pins(): { readonly id: string; readonly place: Point }[] {
    return [...this.#squares.values()].flat();
  }

  /** The pin nearest to a place and nearer than `reach`; null where there is none. */
  nearest(place: Point, reach: number): string | null {
    let found: string | null = null;
    let least = Math.min(reach, this.#size);
    for (const across of [-1, 0, 1]) {
      for (const down of [-1, 0, 1]) {
        for (const pin of this.#squares.get(this.#keyOf(place, across, down)) ?? []) {
          const away = distance(pin.place, place);
          if (away >= least) continue;
          least = away;
          found = pin.id;
        }
      }
    }
    return found;
  }

  #keyOf({ x, y }: Point, across: number, down: number): string {
    return `${Math.floor(x / this.#size) + across},${Math.floor(y / this.#size) + down}`;
  }
}
