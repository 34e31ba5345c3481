import type { Neighbours } from './neighbours.ts';
import { apart } from './places.ts';
import type { Tour } from './tour.ts';

/**
 * Shortens a tour by chains of exchanges (S. Lin and B. W. Kernighan, Operations Research 21 (1973) 498-516): a link is
 * taken out at a place and its loose end joined to a near neighbour, which makes another link loose, and so on, as long
 * as what was taken out is longer than what was put in. A chain counts as soon as closing it leaves the tour shorter;
 * else it is taken back. Only near neighbours are tried, as J. L. Bentley does (see `greedy.ts`).
 */
export class LinKernighan {
  readonly #tour: Tour;
  readonly #xy: Float64Array;
  readonly #near: Neighbours;
  /** What makes a difference: well above rounding, far below anything a machine can tell. */
  readonly #least: number;
  /** The best joints found at each depth: the neighbour, what is then taken out in all, and which kind it is. */
  readonly #neighbour = new Int32Array(BREADTH.length * MOST);
  readonly #loose = new Float64Array(BREADTH.length * MOST);
  readonly #kind = new Uint8Array(BREADTH.length * MOST);
  /** The places whose links the last success changed. */
  readonly touched: number[] = [];

  constructor(tour: Tour, xy: Float64Array, near: Neighbours, least: number) {
    this.#tour = tour;
    this.#xy = xy;
    this.#near = near;
    this.#least = least;
  }

  /** Looks for a shorter tour that lacks one of the links at `place`. Gives by how much it is shorter; 0 for none. */
  improveAt(place: number): number {
    this.touched.length = 0;
    let gained = 0;
    for (let side = 0; side < 2 && gained === 0; side++) {
      const loose = this.#tour.next(place);
      gained = this.#chain(place, loose, apart(this.#xy, place, loose), 0);
      if (gained > 0) this.touched.push(place, loose);
      this.#tour.mirror();
    }
    return gained;
  }

  /** The link from `base` on to `end` counts as taken out; `open` is what was taken out less what was put in. */
  #chain(base: number, end: number, open: number, depth: number): number {
    const tour = this.#tour;
    const first = depth * MOST;
    const found = this.#joints(base, end, open, depth);
    for (let at = first; at < first + found; at++) {
      const near = this.#neighbour[at]!;
      const loose = this.#loose[at]!;
      if (this.#kind[at] === SWAP) {
        const gained = this.#swap(base, end, near, loose, depth);
        if (gained > 0) return gained;
        continue;
      }
      const next = tour.previous(near);
      const closed = loose - apart(this.#xy, next, base);
      if (closed <= this.#least && depth + 1 === BREADTH.length) continue;
      if (closed <= this.#least && tour.moved(end, next) > FAR) continue;
      const mark = tour.turns;
      tour.turn(end, next);
      const gained = closed > this.#least ? closed : this.#chain(base, next, loose, depth + 1);
      if (gained > 0) {
        this.touched.push(near, next);
        return gained;
      }
      tour.takeBack(mark);
    }
    return 0;
  }

  /** Fills in the most promising joints of a depth, best first, and gives their number. */
  #joints(base: number, end: number, open: number, depth: number): number {
    const { each, places, lengths } = this.#near;
    const tour = this.#tour;
    const most = BREADTH[depth]!;
    const after = tour.next(end);
    let held = 0;
    for (let at = end * each; at < (end + 1) * each; at++) {
      const rest = open - lengths[at]!;
      if (rest <= this.#least) break;
      const near = places[at]!;
      if (near === base || near === after) continue;
      held = this.#hold(depth, held, most, near, rest + apart(this.#xy, near, tour.previous(near)), TURN);
      if (depth < SWAPS) {
        held = this.#hold(depth, held, most, near, rest + apart(this.#xy, near, tour.next(near)), SWAP);
      }
    }
    return held;
  }

  #hold(depth: number, held: number, most: number, near: number, loose: number, kind: number): number {
    const first = depth * MOST;
    if (held === most && loose <= this.#loose[first + most - 1]!) return held;
    let at = first + (held < most ? held : most - 1);
    for (; at > first && this.#loose[at - 1]! < loose; at--) {
      this.#loose[at] = this.#loose[at - 1]!;
      this.#neighbour[at] = this.#neighbour[at - 1]!;
      this.#kind[at] = this.#kind[at - 1]!;
    }
    this.#loose[at] = loose;
    this.#neighbour[at] = near;
    this.#kind[at] = kind;
    return held < most ? held + 1 : held;
  }

  /**
   * Joining `end` to `near` and taking out the link beyond closes the stretch between them to a ring; the next joint
   * opens that ring again. This swaps two neighbouring stretches, or turns each: among the rest, it moves a few holes to
   * another part of the tour (I. Or's exchange, 1976).
   */
  #swap(base: number, end: number, near: number, open: number, depth: number): number {
    const { each, places, lengths } = this.#near;
    const tour = this.#tour;
    const after = tour.next(near);
    let best = 0;
    let bestJoint = -1;
    let bestNext = -1;
    for (let at = after * each; at < (after + 1) * each; at++) {
      const rest = open - lengths[at]!;
      if (rest <= this.#least) break;
      const joint = places[at]!;
      if (joint === near || !tour.isBetween(end, joint, near)) continue;
      const next = tour.next(joint);
      const onward = rest + apart(this.#xy, joint, next);
      if (onward > best) {
        best = onward;
        bestJoint = joint;
        bestNext = next;
      }
      if (joint === end) continue;
      const previous = tour.previous(joint);
      const back = rest + apart(this.#xy, joint, previous);
      if (back > best) {
        best = back;
        bestJoint = joint;
        bestNext = previous;
      }
    }
    if (bestJoint < 0) return 0;
    const closed = best - apart(this.#xy, bestNext, base);
    if (closed <= this.#least && depth + 1 === BREADTH.length) return 0;
    if (closed <= this.#least && tour.moved(end, near) > FAR) return 0;
    const mark = tour.turns;
    if (bestNext === tour.next(bestJoint)) {
      // base [end .. joint] [next .. near] after, to: base [next .. near] [end .. joint] after
      tour.turn(end, near);
      tour.turn(near, bestNext);
      tour.turn(bestJoint, end);
    } else {
      // base [end .. next] [joint .. near] after, to: base [next .. end] [near .. joint] after
      tour.turn(end, bestNext);
      tour.turn(bestJoint, near);
    }
    const gained = closed > this.#least ? closed : this.#chain(base, bestNext, best, depth + 1);
    if (gained > 0) {
      this.touched.push(near, after, bestJoint, bestNext);
      return gained;
    }
    tour.takeBack(mark);
    return 0;
  }
}

/** How many joints are tried at each depth of a chain, and how deep swaps are tried: wider or deeper costs more than it brings. */
const BREADTH = [5, 3, 1];
const MOST = Math.max(...BREADTH);
const SWAPS = 1;
/** A longer stretch is turned only where that already shortens the tour, not to try what comes after. */
const FAR = 1000;

const TURN = 0;
const SWAP = 1;
