import { distance, type Point } from '#base/geometry/point.ts';
import { shortestTour } from './shortest.ts';
import { Tour } from './tour.ts';

/**
 * A closed tour on which the heat spreads: each hole stands at least `apart` from the one before, wherever that can be.
 * It goes along the shortest tour, again and again, and each time takes the next hole that is far enough from the last.
 * Steps that stay too short are mended one by one (`farther`). Where no hole has as many as half of the others nearer than
 * `apart`, no short step is left (see there). Gives the holes in their order, by index.
 */
export function spreadOrder(holes: readonly Point[], apart: number): number[] {
  const { order } = shortestTour(holes);
  return order.length < 4 ? [...order] : farther(skipping(order, holes, apart), holes, apart);
}

function skipping(order: readonly number[], holes: readonly Point[], apart: number): number[] {
  // What is left is a ring of places in the order; `ahead` leads round it.
  const ahead = Int32Array.from(order, (_, at) => (at + 1) % order.length);
  const taken: number[] = [];
  for (let before = order.length - 1; taken.length < order.length; ) {
    const last = taken.length === 0 ? null : holes[taken.at(-1)!]!;
    const left = order.length - taken.length;
    let tries = 0;
    const isFar = () => last === null || distance(last, holes[order[ahead[before]!]!]!) >= apart;
    for (; tries < left && !isFar(); tries++) before = ahead[before]!;
    if (tries === left) break;
    const next = ahead[before]!;
    taken.push(order[next]!);
    ahead[before] = ahead[next]!;
  }
  const isTaken = new Uint8Array(holes.length);
  for (const hole of taken) isTaken[hole] = 1;
  return [...taken, ...order.filter((hole) => isTaken[hole] === 0)];
}

/**
 * Where a step from a to b is too short, some stretch from b to v is turned round, so that a leads on to v and b to the
 * one after v, both far enough. If every hole has at least half of the others far enough from it, there is always such
 * a v, and each turn leaves fewer short steps (G. A. Dirac, Proc. London Math. Soc. 2 (1952) 69-81; as a method:
 * E. M. Palmer, Computers and Mathematics with Applications 34 (1997) 113-119).
 */
function farther(order: readonly number[], holes: readonly Point[], apart: number): number[] {
  const tour = new Tour(Int32Array.from(order));
  const isFar = (one: number, other: number) => distance(holes[one]!, holes[other]!) >= apart;
  let inVain = 0;
  // A turn can hand a short step on to a hole that has had its turn already; so it goes round until nothing is mended.
  for (let mended = true; mended; ) {
    mended = false;
    for (const from of order) {
      const to = tour.next(from);
      if (isFar(from, to)) continue;
      if (inVain === MOST_IN_VAIN) break;
      const end = cheapest(tour, holes, from, to, isFar);
      if (end < 0) inVain++;
      else {
        tour.turn(to, end);
        tour.keep();
        mended = true;
      }
    }
  }
  return Array.from(tour.from(order[0]!));
}

/** The end of the stretch whose turn costs the least way, among the first few that would do; -1 for none. */
function cheapest(
  tour: Tour,
  holes: readonly Point[],
  from: number,
  to: number,
  isFar: (one: number, other: number) => boolean,
): number {
  const way = (one: number, other: number) => distance(holes[one]!, holes[other]!);
  let [best, least, found] = [-1, Number.POSITIVE_INFINITY, 0];
  for (let end = to, after = tour.next(to); after !== from && found < CHOICE; ) {
    end = after;
    after = tour.next(end);
    if (!isFar(from, end) || !isFar(to, after)) continue;
    found++;
    const cost = way(from, end) + way(to, after) - way(end, after);
    if (cost < least) [best, least] = [end, cost];
  }
  return best;
}

const CHOICE = 64;
/** After so many short steps that nothing mends, the holes stand too close for more. */
const MOST_IN_VAIN = 200;
