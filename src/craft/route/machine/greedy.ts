import { type Neighbours, nearestOthers } from './neighbours.ts';
import { apart, indexed, type Places } from './places.ts';

/**
 * A closed tour to start from: the shortest link between two open ends is put in, again and again, unless it would close
 * a ring (the greedy method; J. L. Bentley, ORSA Journal on Computing 4 (1992) 387-411). Links between near neighbours
 * come first; the ends that these leave open are then joined in rounds among themselves. n log n.
 */
export function greedyTour({ count, xy }: Places, neighbours: Neighbours): Int32Array {
  const chains = new Chains(count);
  let nearest: Nearest = { ...neighbours, nameOf: (at) => at };
  while (chains.links < count - 1) {
    for (const [one, other] of shortestFirst(nearest)) chains.link(one, other);
    if (chains.links < count - 1) nearest = betweenEnds(chains.openEnds(), xy);
  }
  return chains.walk();
}

/** Neighbours of some of the places, and which places these are. */
type Nearest = Neighbours & { readonly nameOf: (at: number) => number };

/** Few are enough: a round joins each chain at least when its nearest other end is still open. */
const ENDS = 6;

function betweenEnds(ends: readonly number[], xy: Float64Array): Nearest {
  const tree = indexed(ends.map((end) => ({ x: xy[2 * end]!, y: xy[2 * end + 1]! })));
  return { ...nearestOthers(tree, ENDS), nameOf: (at) => ends[tree.ids[at]!]! };
}

/**
 * Length and number of a link are packed into one float, so that the fast sort of plain numbers does: the upper 30 bits
 * of the length in single precision, then 23 bits of the number, which leaves links of equal length in their order.
 */
function* shortestFirst({ each, places, lengths, nameOf }: Nearest): Generator<[number, number]> {
  const length = new Float32Array(1);
  const bits = new Uint32Array(length.buffer);
  const keys = new Float64Array(places.length);
  for (let link = 0; link < places.length; link++) {
    length[0] = lengths[link]!;
    keys[link] = (bits[0]! >>> 1) * NUMBERS + link;
  }
  keys.sort();
  for (const key of keys) {
    const link = key % NUMBERS;
    yield [nameOf(Math.floor(link / each)), nameOf(places[link]!)];
  }
}

const NUMBERS = 2 ** 23;

/** Places joined into chains, each place with at most two links. */
class Chains {
  links = 0;
  readonly #one: Int32Array;
  readonly #two: Int32Array;
  /** For an end of a chain, its other end. */
  readonly #far: Int32Array;

  constructor(count: number) {
    this.#one = new Int32Array(count).fill(-1);
    this.#two = new Int32Array(count).fill(-1);
    this.#far = Int32Array.from({ length: count }, (_, at) => at);
  }

  link(one: number, other: number): void {
    if (this.#two[one]! >= 0 || this.#two[other]! >= 0 || this.#far[one] === other) return;
    this.#join(one, other);
    this.#join(other, one);
    const [start, end] = [this.#far[one]!, this.#far[other]!];
    this.#far[start] = end;
    this.#far[end] = start;
    this.links++;
  }

  openEnds(): number[] {
    return Array.from(this.#two.keys()).filter((place) => this.#two[place]! < 0);
  }

  /** The one chain, from its end with the smaller number. */
  walk(): Int32Array {
    const order = new Int32Array(this.#one.length);
    let before = -1;
    let here = Math.max(0, this.#two.indexOf(-1));
    for (let at = 0; at < order.length; at++) {
      order[at] = here;
      const on = this.#one[here] === before ? this.#two[here]! : this.#one[here]!;
      before = here;
      here = on;
    }
    return order;
  }

  #join(place: number, to: number): void {
    if (this.#one[place]! < 0) this.#one[place] = to;
    else this.#two[place] = to;
  }
}

/** The length of a closed tour. */
export function tourLength(order: Int32Array, xy: Float64Array): number {
  let length = 0;
  for (let at = 0; at < order.length; at++)
    length += apart(xy, order[at]!, order[at + 1 === order.length ? 0 : at + 1]!);
  return length;
}
