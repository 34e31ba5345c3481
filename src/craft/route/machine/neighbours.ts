import type KDBush from 'kdbush';

/** For each of many places its nearest others, nearest first; all have equally many. */
export interface Neighbours {
  /** How many each has. */
  readonly each: number;
  /** Of place p those from `p * each` on, by the number of their place. */
  readonly places: Int32Array;
  /** How far each of them is. */
  readonly lengths: Float64Array;
}

/**
 * The `wanted` nearest others of each place in the tree, or all others where there are fewer. Places are numbered as the
 * tree holds them. n log n; coinciding places are each other's neighbours.
 */
export function nearestOthers(tree: KDBush, wanted: number): Neighbours {
  const each = Math.min(wanted, tree.numItems - 1);
  const places = new Int32Array(tree.numItems * each);
  const lengths = new Float64Array(tree.numItems * each);
  if (each > 0) {
    const search = new Search(tree, each);
    for (let place = 0; place < tree.numItems; place++) {
      search.round(place);
      for (let at = 0; at < each; at++) {
        places[place * each + at] = search.found[at]!;
        lengths[place * each + at] = Math.sqrt(search.squares[at]!);
      }
    }
  }
  return { each, places, lengths };
}

/** Walks the tree that kdbush keeps in one array: each part is split at its middle, by x and y in turn. */
class Search {
  readonly found: Int32Array;
  readonly squares: Float64Array;
  readonly #xy: Float64Array;
  readonly #leaf: number;
  readonly #most: number;
  readonly #parts: number[] = [];
  readonly #bounds: number[] = [];
  #held = 0;

  constructor(tree: KDBush, most: number) {
    this.#xy = tree.coords as Float64Array;
    this.#leaf = tree.nodeSize;
    this.#most = most;
    this.found = new Int32Array(most);
    this.squares = new Float64Array(most);
  }

  round(place: number): void {
    const xy = this.#xy;
    const parts = this.#parts;
    const here = [xy[2 * place]!, xy[2 * place + 1]!] as const;
    this.#held = 0;
    this.#visit(0, xy.length / 2 - 1, 0, 0);
    while (parts.length > 0) {
      const axis = parts.pop()!;
      const right = parts.pop()!;
      const left = parts.pop()!;
      const bound = this.#bounds.pop()!;
      if (this.#held === this.#most && bound >= this.squares[this.#most - 1]!) continue;
      if (right - left <= this.#leaf) {
        for (let at = left; at <= right; at++) this.#take(at, place);
        continue;
      }
      const middle = (left + right) >> 1;
      this.#take(middle, place);
      const ahead = here[axis as 0 | 1] - xy[2 * middle + axis]!;
      if (ahead <= 0) {
        this.#visit(middle + 1, right, 1 - axis, ahead * ahead);
        this.#visit(left, middle - 1, 1 - axis, 0);
      } else {
        this.#visit(left, middle - 1, 1 - axis, ahead * ahead);
        this.#visit(middle + 1, right, 1 - axis, 0);
      }
    }
  }

  #visit(left: number, right: number, axis: number, bound: number): void {
    this.#parts.push(left, right, axis);
    this.#bounds.push(bound);
  }

  #take(other: number, place: number): void {
    if (other === place) return;
    const dx = this.#xy[2 * other]! - this.#xy[2 * place]!;
    const dy = this.#xy[2 * other + 1]! - this.#xy[2 * place + 1]!;
    const square = dx * dx + dy * dy;
    const { found, squares } = this;
    if (this.#held === this.#most && square >= squares[this.#most - 1]!) return;
    let at = this.#held < this.#most ? this.#held++ : this.#most - 1;
    for (; at > 0 && squares[at - 1]! > square; at--) {
      squares[at] = squares[at - 1]!;
      found[at] = found[at - 1]!;
    }
    squares[at] = square;
    found[at] = other;
  }
}
