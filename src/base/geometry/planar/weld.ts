import { distance, type Point } from '../point.ts';

/** Places of which none lies within a small distance of another: those that would are taken for the earlier one. */
export class PlaceWeld {
  readonly all: Point[] = [];
  readonly #weld: number;
  readonly #cells = new Map<string, number[]>();

  constructor(weld: number) {
    if (!(weld > 0)) throw new RangeError(`PlaceWeld: ${weld}`);
    this.#weld = weld;
  }

  /** Keeps a place under the next index even where it counts as an earlier one, whose index is given back then. */
  addGiven(place: Point): number {
    const known = this.#near(place);
    this.all.push(place);
    return known ?? this.#enter(place, this.all.length - 1);
  }

  /** The index of the place that this one counts as. */
  add(place: Point): number {
    const known = this.#near(place);
    if (known !== null) return known;
    this.all.push(place);
    return this.#enter(place, this.all.length - 1);
  }

  #enter(place: Point, index: number): number {
    const [column, row] = this.#cellOf(place);
    const key = `${column} ${row}`;
    const cell = this.#cells.get(key);
    if (cell) cell.push(index);
    else this.#cells.set(key, [index]);
    return index;
  }

  #near(place: Point): number | null {
    const [column, row] = this.#cellOf(place);
    let best: number | null = null;
    for (const x of [column - 1, column, column + 1]) {
      for (const y of [row - 1, row, row + 1]) {
        for (const index of this.#cells.get(`${x} ${y}`) ?? []) {
          if (distance(place, this.all[index]!) > this.#weld) continue;
          best = best === null ? index : Math.min(best, index);
        }
      }
    }
    return best;
  }

  readonly #cellOf = ({ x, y }: Point): readonly [number, number] => [
    Math.floor(x / this.#weld),
    Math.floor(y / this.#weld),
  ];
}
