import type { Net, Node } from './net.ts';

/**
 * Which of the empty nodes of a net were meant: the holes that come again at two even steps, as the gaps of a honeycomb
 * do, and at the rim of such a ground the places where the next hole would be. Pins that were forgotten lie anywhere.
 * `holes` are those empty nodes that have pins round them; all by their key.
 */
export function meantHoles(
  net: Net,
  holes: ReadonlyMap<number, Node>,
  empty: ReadonlyMap<number, Node>,
): ReadonlySet<number> {
  const share = Math.max(LEAST_SHARE, holes.size / (holes.size + net.memberCount));
  const meant = new Set<number>();
  for (const [key, hole] of holes) {
    if (meant.has(key)) continue;
    const basis = basisAt(net, holes, hole, share);
    if (basis !== null) spread(net, holes, empty, hole, basis, meant);
  }
  return meant;
}

type Basis = readonly [Node, Node];

/** Steps between meant holes are no longer than this along either direction of the net. */
const LONGEST = 4;
/** Holes of fewer nodes each would touch; of more, they are too rare to tell from chance. */
const LEAST_CELL = 3;
const MOST_CELL = 9;
/** Of forgotten pins, no fewer than this share of all is reckoned with. */
const LEAST_SHARE = 0.01;
/** How often the next hole is there where holes are meant: at the rim of a filling there is none. */
const WHERE_MEANT = 0.7;
/** How much likelier the holes round one must be where they are meant than where pins were forgotten. */
const LIKELIER = 1000;

/** The two steps at which holes lie round this one far oftener than by chance (Bayes); null where none do. */
function basisAt(net: Net, holes: ReadonlyMap<number, Node>, hole: Node, share: number): Basis | null {
  const steps = stepsToHoles(net, holes, hole);
  let best: Basis | null = null;
  let most = Math.log(LIKELIER);
  for (const [at, one] of steps.entries()) {
    for (const other of steps.slice(at + 1)) {
      const cell = Math.abs(one[0] * other[1] - one[1] * other[0]);
      if (cell < LEAST_CELL || cell > MOST_CELL) continue;
      let likelier = 0;
      for (const [m, n] of AROUND) {
        const place = moved(hole, [one, other], m, n);
        if (!net.exists(place)) continue;
        if (holes.has(net.keyOf(place))) likelier += Math.log(WHERE_MEANT / share);
        else if (net.isPinned(place)) likelier += Math.log((1 - WHERE_MEANT) / (1 - share));
      }
      if (likelier > most) [best, most] = [[one, other], likelier];
    }
  }
  return best;
}

const AROUND = [
  [1, 0],
  [0, 1],
  [1, 1],
  [1, -1],
  [-1, 0],
  [0, -1],
  [-1, -1],
  [-1, 1],
] as const;

const moved = ([i, j]: Node, [[ai, aj], [bi, bj]]: Basis, m: number, n: number): Node => [
  i + m * ai + n * bi,
  j + m * aj + n * bj,
];

function stepsToHoles(net: Net, holes: ReadonlyMap<number, Node>, [i, j]: Node): Node[] {
  const steps: Node[] = [];
  for (let di = 0; di <= LONGEST; di++) {
    for (let dj = di === 0 ? 1 : -LONGEST; dj <= LONGEST; dj++) {
      const there = [[i + di, j + dj] as const, [i - di, j - dj] as const];
      if (there.some((node) => net.exists(node) && holes.has(net.keyOf(node)))) steps.push([di, dj]);
    }
  }
  return steps;
}

/** Marks all empty nodes that the two steps lead to from one hole, over other holes. */
function spread(
  net: Net,
  holes: ReadonlyMap<number, Node>,
  empty: ReadonlyMap<number, Node>,
  start: Node,
  basis: Basis,
  meant: Set<number>,
): void {
  const front = [start];
  meant.add(net.keyOf(start));
  for (const hole of front) {
    for (const [m, n] of AROUND) {
      const next = moved(hole, basis, m, n);
      const key = net.exists(next) ? net.keyOf(next) : -1;
      if (!empty.has(key) || meant.has(key)) continue;
      meant.add(key);
      if (holes.has(key)) front.push(next);
    }
  }
}
