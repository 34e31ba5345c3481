import { seededRandom } from '#base/random.ts';
import { LinKernighan } from './lin-kernighan.ts';
import type { Neighbours } from './neighbours.ts';
import { apart, type Places } from './places.ts';
import type { Tour } from './tour.ts';

/**
 * Shortens a tour until no chain of exchanges helps, then shakes it here and there and mends what was shaken, as often as
 * `shakes` says; what did not come out shorter is taken back (O. Martin, S. W. Otto and E. W. Felten, Complex Systems 5
 * (1991) 299-326). A shake is their double bridge, of three neighbouring short stretches, which no chain undoes in one go.
 * Shakes go from place to near place: every part gets its share, and what is touched next is still at hand. Chance is seeded and work is counted, not timed: same
 * holes, same tour.
 */
export function shorten(tour: Tour, { count, xy }: Places, neighbours: Neighbours, shakes: number): void {
  const least = LEAST * meanLength(neighbours);
  const search = new LinKernighan(tour, xy, neighbours, least);
  const waiting = new Queue(count);
  for (let place = 0; place < count; place++) waiting.add(place);
  settle(search, waiting, tour, true);
  if (count < 8) return;

  const random = seededRandom(SEED);
  const longest = Math.min(STRETCH, Math.floor((count - 2) / 3));
  const stretch = () => 1 + Math.floor(random() * longest);
  for (let shake = 0, base = 0; shake < shakes; shake++) {
    base = (base + stretch()) % count;
    const worse = doubleBridge(tour, xy, base, [stretch(), stretch(), stretch()], waiting);
    if (worse - settle(search, waiting, tour, false) > least) tour.takeBack(0);
    tour.keep();
  }
}

const SEED = 1;
/** The longest stretch that a shake swaps, in holes. */
const STRETCH = 30;
/** As a share of the mean distance between neighbours, the least that counts as shorter. */
const LEAST = 1e-7;

/** Mends round all places that wait; gives by how much the tour became shorter. */
function settle(search: LinKernighan, waiting: Queue, tour: Tour, forGood: boolean): number {
  let gained = 0;
  for (let place = waiting.take(); place >= 0; place = waiting.take()) {
    for (let gain = search.improveAt(place); gain > 0; gain = search.improveAt(place)) {
      gained += gain;
      for (const one of search.touched) waiting.add(one);
      if (forGood) tour.keep();
    }
  }
  return gained;
}

/** base [a1 .. a2] [b1 .. b2] [c1 .. c2] after, to: base [c] [b] [a] after. Gives by how much that is longer. */
function doubleBridge(
  tour: Tour,
  xy: Float64Array,
  base: number,
  [first, second, third]: readonly [number, number, number],
  waiting: Queue,
): number {
  const a1 = tour.next(base);
  const a2 = onward(tour, a1, first - 1);
  const b1 = tour.next(a2);
  const b2 = onward(tour, b1, second - 1);
  const c1 = tour.next(b2);
  const c2 = onward(tour, c1, third - 1);
  const after = tour.next(c2);
  tour.turn(a1, c2);
  tour.turn(c2, c1);
  tour.turn(b2, b1);
  tour.turn(a2, a1);
  for (const place of [base, a1, a2, b1, b2, c1, c2, after]) waiting.add(place);
  const before = apart(xy, base, a1) + apart(xy, a2, b1) + apart(xy, b2, c1) + apart(xy, c2, after);
  return apart(xy, base, c1) + apart(xy, c2, b1) + apart(xy, b2, a1) + apart(xy, a2, after) - before;
}

function onward(tour: Tour, place: number, steps: number): number {
  let here = place;
  for (let left = steps; left > 0; left--) here = tour.next(here);
  return here;
}

function meanLength({ lengths }: Neighbours): number {
  let sum = 0;
  for (const length of lengths) sum += length / lengths.length;
  return sum;
}

/** Places that wait for their turn, each at most once. */
class Queue {
  readonly #ring: Int32Array;
  readonly #waits: Uint8Array;
  #first = 0;
  #held = 0;

  constructor(count: number) {
    this.#ring = new Int32Array(count);
    this.#waits = new Uint8Array(count);
  }

  add(place: number): void {
    if (this.#waits[place] === 1) return;
    this.#waits[place] = 1;
    const at = this.#first + this.#held++;
    this.#ring[at < this.#ring.length ? at : at - this.#ring.length] = place;
  }

  /** The place that has waited longest, or -1. */
  take(): number {
    if (this.#held === 0) return -1;
    const place = this.#ring[this.#first]!;
    this.#first = this.#first + 1 === this.#ring.length ? 0 : this.#first + 1;
    this.#held--;
    this.#waits[place] = 0;
    return place;
  }
}
