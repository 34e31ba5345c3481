import {
  addToLattice,
  emptyLatticeSums,
  type LatticeFrame,
  latticeNode,
  latticeOfSums,
  latticePlace,
} from '#base/fit/lattice.ts';
import { deviationOfDistances } from '#base/fit/robust.ts';
import { length, type Point, subtract } from '#base/geometry/point.ts';
import { type Field, pinsWithin } from './field.ts';

/** A lattice with the pins that stand on it: at most one a node. */
export interface GrownLattice {
  readonly frame: LatticeFrame;
  /** Standard deviation of a pin from its node, per coordinate. */
  readonly sigma: number;
  /** The farthest that a pin of this lattice stands from its node. */
  readonly tolerance: number;
  readonly pinAt: ReadonlyMap<number, number>;
  readonly nodeOf: ReadonlyMap<number, readonly [number, number]>;
}

/** One number for a node, so that nodes can be kept in a map. */
export const nodeKey = (i: number, j: number): number => (i + HALF) * 2 * HALF + (j + HALF);

/** The steps to the eight nodes round a node. */
export const ROUND_NODE = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
  [-1, -1],
] as const;

/**
 * Grows a lattice from a guess outward through the pins that are free, refitting as it goes, so that each ring of
 * nodes is foretold from all within it. Null where the pins turn out not to stand on nodes more than by chance.
 */
export function growLattice(
  field: Field,
  guess: LatticeFrame,
  start: readonly number[],
  isFree: (pin: number) => boolean,
): GrownLattice | null {
  const size = length(guess.a);
  const state: Growth = {
    field,
    base: guess.origin,
    frame: { ...guess, origin: { x: 0, y: 0 } },
    pinAt: new Map(),
    nodeOf: new Map(),
  };
  claim(state, start.filter(isFree), LOOSE * size);
  if (!refit(state, LOOSE * size)) return null;
  let front = [...state.nodeOf.keys()];
  let fitted = front.length;
  for (let ring = 0; front.length > 0 && ring < MOST_RINGS; ring++) {
    const around = new Set<number>();
    for (const pin of front) {
      for (const other of field.near[pin]!) if (!state.nodeOf.has(other) && isFree(other)) around.add(other);
    }
    front = claim(state, [...around], LOOSE * length(state.frame.a));
    // A fit after every ring would cost the square of a long strip's length; a tenth more pins is worth a new one.
    if (state.nodeOf.size < GROWTH * fitted) continue;
    if (!refit(state, LOOSE * length(state.frame.a))) return null;
    fitted = state.nodeOf.size;
  }
  return settle(state, isFree);
}

interface Growth {
  readonly field: Field;
  /** Node (0, 0) is reckoned from here, which keeps sums exact far from the sheet's origin. */
  readonly base: Point;
  frame: LatticeFrame;
  readonly pinAt: Map<number, number>;
  readonly nodeOf: Map<number, readonly [number, number]>;
}

const HALF = 32768;
/** While growing, a pin may stand this part of the shortest step from its node. */
const LOOSE = 0.4;
/** At the end it may stand this many standard deviations from it: of normal pins one in 700 stands farther. */
const TIGHT = 3.6;
/** A lattice of fewer pins is not told from chance. */
const LEAST_MEMBERS = 10;
const LEAST_NEIGHBOURS = 3;
const MOST_RINGS = 2000;
const GROWTH = 1.1;
/** Rounding of coordinates in files must not make a pin leave an exact lattice. */
const ROUNDING = 0.004;
/** Pins at random spread over the whole of the loose disc; those of a lattice crowd round the node. */
const MOST_SPREAD = 0.6;

function claim(state: Growth, pins: readonly number[], reach: number): number[] {
  const { field, pinAt, nodeOf, frame, base } = state;
  const taken: number[] = [];
  for (const pin of pins) {
    const out = subtract(field.pins[pin]!, base);
    const place = latticePlace(frame, out);
    const i = Math.round(place.i);
    const j = Math.round(place.j);
    if (Math.max(Math.abs(i), Math.abs(j)) >= HALF) continue;
    const off = length(subtract(out, latticeNode(frame, i, j)));
    if (off > reach) continue;
    const rival = pinAt.get(nodeKey(i, j));
    if (rival !== undefined) {
      const rivalOff = length(subtract(subtract(field.pins[rival]!, base), latticeNode(frame, i, j)));
      if (rivalOff <= off) continue;
      nodeOf.delete(rival);
    }
    pinAt.set(nodeKey(i, j), pin);
    nodeOf.set(pin, [i, j]);
    taken.push(pin);
  }
  return taken.filter((pin) => nodeOf.has(pin));
}

/** Fits the lattice to its pins; those farther off than `reach` lose their place. False where nothing is left to fit. */
function refit(state: Growth, reach: number): boolean {
  for (let round = 0; round < 2; round++) {
    const sums = emptyLatticeSums();
    for (const [pin, [i, j]] of state.nodeOf) {
      addToLattice(sums, i, j, subtract(state.field.pins[pin]!, state.base));
    }
    const frame = latticeOfSums(sums);
    if (frame === null || state.nodeOf.size < 6) return false;
    state.frame = frame;
    if (dropFar(state, reach) === 0) break;
  }
  return true;
}

const offNode = (state: Growth, pin: number): number => length(offsetOf(state, pin));

function drop(state: Growth, pin: number): void {
  const [i, j] = state.nodeOf.get(pin)!;
  state.pinAt.delete(nodeKey(i, j));
  state.nodeOf.delete(pin);
}

function dropFar(state: Growth, reach: number): number {
  const far = [...state.nodeOf.keys()].filter((pin) => offNode(state, pin) > reach);
  for (const pin of far) drop(state, pin);
  return far.length;
}

/** The last rounds: sweep up all that fits, keep what the noise allows and what has neighbours. */
function settle(state: Growth, isFree: (pin: number) => boolean): GrownLattice | null {
  let sigma = 0;
  let tolerance = 0;
  for (let round = 0; round < 3; round++) {
    if (state.nodeOf.size < LEAST_MEMBERS) return null;
    const size = length(state.frame.a);
    const offs = [...state.nodeOf.keys()].map((pin) => offNode(state, pin));
    sigma = deviationOfDistances(offs);
    if (round === 0 && spread(offs, LOOSE * size) > MOST_SPREAD) return null;
    tolerance = Math.min(Math.max(TIGHT * sigma, ROUNDING * size), LOOSE * 1.15 * size);
    sweep(state, isFree, tolerance);
    dropFar(state, tolerance);
    dropOffsetRows(state, sigma);
    dropLonely(state);
    if (!refit(state, tolerance)) return null;
  }
  if (state.nodeOf.size < LEAST_MEMBERS || isThin(state) || !isGround(state)) return null;
  const { origin, a, b } = state.frame;
  const frame = { origin: { x: origin.x + state.base.x, y: origin.y + state.base.y }, a, b };
  return { frame, sigma, tolerance, pinAt: state.pinAt, nodeOf: state.nodeOf };
}

/** Mean square distance from the node against that of points spread evenly over the disc. */
function spread(offs: readonly number[], reach: number): number {
  let squares = 0;
  for (const off of offs) squares += off * off;
  return squares / offs.length / ((reach * reach) / 2);
}

/** Takes in free pins at nodes that touch the lattice, again and again until none is left. */
function sweep(state: Growth, isFree: (pin: number) => boolean, reach: number): void {
  let front = [...state.nodeOf.keys()];
  while (front.length > 0) {
    const around = new Set<number>();
    for (const pin of front) {
      const node = state.nodeOf.get(pin);
      if (node === undefined) continue;
      for (const [di, dj] of ROUND_NODE) {
        if (state.pinAt.has(nodeKey(node[0] + di, node[1] + dj))) continue;
        const place = latticeNode(state.frame, node[0] + di, node[1] + dj);
        const there = { x: place.x + state.base.x, y: place.y + state.base.y };
        for (const other of pinsWithin(state.field, there, reach)) {
          if (!state.nodeOf.has(other) && isFree(other)) around.add(other);
        }
      }
    }
    front = claim(state, [...around], reach);
  }
}

/** Directions of rows, and of the side steps that tell whether a row is the lattice's last. */
const ROWS = [
  { along: [1, 0], aside: [0, 1] },
  { along: [0, 1], aside: [1, 0] },
  { along: [1, -1], aside: [1, 0] },
  { along: [1, 1], aside: [1, 0] },
] as const;
const LEAST_ROW = 4;
/** Mean offset of a last row, in its own standard errors, beyond which it is a line of its own beside the lattice. */
const MOST_OFFSET = 3.5;

/**
 * A footside often stands a little off the ground's lattice: its row as a whole is shifted, and is let go. The noise is
 * taken from within rows, since in a narrow strip the shift of its edges is most of what the pins as a whole are off.
 */
function dropOffsetRows(state: Growth, sigma: number): void {
  for (const { along, aside } of ROWS) {
    const rows = rowsOf(state, along).map((pins) => ({
      pins,
      offs: pins.map((pin) => offsetOf(state, pin)),
    }));
    const noise = Math.min(sigma, noiseWithin(rows.map(({ offs }) => offs)));
    for (const { pins, offs } of rows) {
      if (pins.length < LEAST_ROW || !isLast(state, pins, aside)) continue;
      const error = Math.max(noise, ROUNDING * length(state.frame.a) * 0.3) / Math.sqrt(pins.length);
      if (length(meanOf(offs)) > MOST_OFFSET * error) for (const pin of pins) drop(state, pin);
    }
  }
}

function offsetOf(state: Growth, pin: number): Point {
  const [i, j] = state.nodeOf.get(pin)!;
  return subtract(subtract(state.field.pins[pin]!, state.base), latticeNode(state.frame, i, j));
}

const meanOf = (offs: readonly Point[]): Point => ({
  x: offs.reduce((sum, { x }) => sum + x, 0) / offs.length,
  y: offs.reduce((sum, { y }) => sum + y, 0) / offs.length,
});

/** Standard deviation per coordinate about the rows' own means; infinite where every row is a single pin. */
function noiseWithin(rows: readonly (readonly Point[])[]): number {
  let [squares, freedom] = [0, 0];
  for (const offs of rows) {
    const mean = meanOf(offs);
    for (const off of offs) squares += length(subtract(off, mean)) ** 2;
    freedom += 2 * (offs.length - 1);
  }
  return freedom === 0 ? Number.POSITIVE_INFINITY : Math.sqrt(squares / freedom);
}

/** Members grouped by the straight row they stand in. */
function rowsOf(state: Growth, [di, dj]: readonly [number, number]): number[][] {
  const rows = new Map<number, number[]>();
  for (const [pin, [i, j]] of state.nodeOf) {
    const row = i * dj - j * di;
    const own = rows.get(row);
    if (own === undefined) rows.set(row, [pin]);
    else own.push(pin);
  }
  return [...rows.values()];
}

/** Whether hardly any pin of a row has a neighbour on one of its sides. */
function isLast(state: Growth, row: readonly number[], [di, dj]: readonly [number, number]): boolean {
  let [one, other] = [0, 0];
  for (const pin of row) {
    const [i, j] = state.nodeOf.get(pin)!;
    if (state.pinAt.has(nodeKey(i + di, j + dj))) one++;
    if (state.pinAt.has(nodeKey(i - di, j - dj))) other++;
  }
  return Math.min(one, other) <= 0.15 * row.length;
}

export const neighboursAt = (pinAt: ReadonlyMap<number, number>, i: number, j: number): number => {
  let count = 0;
  for (const [di, dj] of ROUND_NODE) if (pinAt.has(nodeKey(i + di, j + dj))) count++;
  return count;
};

function dropLonely(state: Growth): void {
  let look = [...state.nodeOf.keys()];
  while (look.length > 0) {
    const next: number[] = [];
    for (const pin of look) {
      const node = state.nodeOf.get(pin);
      if (node === undefined || neighboursAt(state.pinAt, node[0], node[1]) >= LEAST_NEIGHBOURS) continue;
      drop(state, pin);
      for (const [di, dj] of ROUND_NODE) {
        const other = state.pinAt.get(nodeKey(node[0] + di, node[1] + dj));
        if (other !== undefined) next.push(other);
      }
    }
    look = next;
  }
}

/**
 * Whether the members make a ground: a good share of them has nodes all round, and most pins near them are members
 * too. Two curves that run side by side, or a crowded motif, imitate a lattice only in strips and scraps.
 */
function isGround(state: Growth): boolean {
  let cores = 0;
  let members = 0;
  let asked = 0;
  const offs: number[] = [];
  for (const [pin, [i, j]] of state.nodeOf) {
    if (neighboursAt(state.pinAt, i, j) >= 6) cores++;
    offs.push(offNode(state, pin));
    for (const other of state.field.near[pin]!.subarray(0, 5)) {
      asked++;
      if (state.nodeOf.has(other)) members++;
    }
  }
  if (spread(offs, LOOSE * length(state.frame.a)) > MOST_SPREAD) return false;
  return cores >= 3 && cores >= LEAST_CORES * state.nodeOf.size && members >= LEAST_FELLOWS * asked;
}

const LEAST_CORES = 0.2;
const LEAST_FELLOWS = 0.65;

/** A lattice one or two rows wide is a run or two, not a ground. */
function isThin(state: Growth): boolean {
  const lines = [new Set<number>(), new Set<number>(), new Set<number>()];
  for (const [i, j] of state.nodeOf.values()) {
    lines[0]!.add(i);
    lines[1]!.add(j);
    lines[2]!.add(i + j);
  }
  return lines.some((line) => line.size < 3);
}
