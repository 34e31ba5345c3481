import type { Point } from './point.ts';

/**
 * Asks very often which of many points is the nearest to a place, within a small reach: a hashless grid in typed arrays
 * that makes no garbage. For anything else see `PointIndex`.
 */
export class NearestGrid {
  readonly #xs: Float64Array;
  readonly #ys: Float64Array;
  readonly #cell: number;
  readonly #left: number;
  readonly #top: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #firsts: Uint32Array;
  readonly #order: Uint32Array;

  /** `reach` is the farthest that `nearest` will look; answers are cheap while few points lie within it. */
  constructor(points: readonly Point[], reach: number) {
    if (!(reach > 0)) throw new RangeError(`NearestGrid: reach is ${reach}`);
    this.#xs = Float64Array.from(points, ({ x }) => x);
    this.#ys = Float64Array.from(points, ({ y }) => y);
    this.#left = points.reduce((least, { x }) => Math.min(least, x), Number.POSITIVE_INFINITY);
    this.#top = points.reduce((least, { y }) => Math.min(least, y), Number.POSITIVE_INFINITY);
    const right = points.reduce((most, { x }) => Math.max(most, x), this.#left);
    const bottom = points.reduce((most, { y }) => Math.max(most, y), this.#top);
    // a cell is never less than the reach, so that nine cells hold every answer, and cells stay few for few points
    const area = Math.max(0, (right - this.#left) * (bottom - this.#top));
    this.#cell = Math.max(
      reach,
      Math.sqrt(area / (4 * points.length + 1)),
      (right - this.#left) / 4096,
      (bottom - this.#top) / 4096,
    );
    this.#columns = points.length === 0 ? 0 : Math.floor((right - this.#left) / this.#cell) + 1;
    this.#rows = points.length === 0 ? 0 : Math.floor((bottom - this.#top) / this.#cell) + 1;
    const cells = Uint32Array.from(points, ({ x, y }) => this.#cellOf(x, y));
    this.#firsts = new Uint32Array(this.#columns * this.#rows + 1);
    for (const cell of cells) this.#firsts[cell + 1]!++;
    for (let cell = 0; cell + 1 < this.#firsts.length; cell++) this.#firsts[cell + 1]! += this.#firsts[cell]!;
    const next = this.#firsts.slice();
    this.#order = new Uint32Array(points.length);
    cells.forEach((cell, index) => {
      this.#order[next[cell]!++] = index;
    });
  }

  /** The index of the nearest point within `reach` (at most the grid's own), or -1 where there is none. */
  nearest(x: number, y: number, reach: number): number {
    const column = Math.floor((x - this.#left) / this.#cell);
    const row = Math.floor((y - this.#top) / this.#cell);
    const from = Math.max(0, column - 1);
    const to = Math.min(this.#columns - 1, column + 1);
    if (!(from <= to)) return -1;
    let best = -1;
    let least = reach * reach;
    for (let r = Math.max(0, row - 1); r <= row + 1 && r < this.#rows; r++) {
      const stop = this.#firsts[r * this.#columns + to + 1]!;
      for (let k = this.#firsts[r * this.#columns + from]!; k < stop; k++) {
        const index = this.#order[k]!;
        const dx = this.#xs[index]! - x;
        const dy = this.#ys[index]! - y;
        const away = dx * dx + dy * dy;
        if (away > least || (away === least && best >= 0 && index > best)) continue;
        least = away;
        best = index;
      }
    }
    return best;
  }

  #cellOf(x: number, y: number): number {
    return (
      Math.floor((y - this.#top) / this.#cell) * this.#columns + Math.floor((x - this.#left) / this.#cell)
    );
  }
}
