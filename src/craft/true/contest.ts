import { latticeNode } from '#base/fit/lattice.ts';
import { distance, length } from '#base/geometry/point.ts';
import { type Chain, tripleCost } from './chain.ts';
import { findChains } from './chains.ts';
import type { Field } from './field.ts';
import { type GrownLattice, neighboursAt, nodeKey } from './lattice-grow.ts';

/**
 * Takes out of a lattice the pins that rather belong to a line crossing it: a motif's outline passes close to some
 * nodes by chance. Such a pin stands at the lattice's rim, between pins off the lattice that it joins smoothly.
 */
export function releaseCrossing(field: Field, lattices: readonly GrownLattice[]): GrownLattice[] {
  let held = [...lattices];
  for (let round = 0; round < ROUNDS; round++) {
    const members = new Set(held.flatMap(({ nodeOf }) => [...nodeOf.keys()]));
    const inner = new Set(
      held.flatMap(({ nodeOf, pinAt }) =>
        [...nodeOf].flatMap(([pin, [i, j]]) => (neighboursAt(pinAt, i, j) >= INNER ? [pin] : [])),
      ),
    );
    const chains = findChains(field, (pin) => !inner.has(pin) && !field.doubled.has(pin));
    const crossed = new Set(chains.flatMap((chain) => crossing(chain, members)));
    const released = new Set<number>();
    for (const lattice of held) {
      for (const pin of lattice.nodeOf.keys()) {
        if (inner.has(pin)) continue;
        const isCrossed = crossed.has(pin) && offNode(field, lattice, pin) > ON_NODE * lattice.sigma;
        if (isCrossed || joinsOthers(field, lattice, pin, members)) released.add(pin);
      }
    }
    if (released.size === 0) break;
    held = held.map((lattice) => without(lattice, released));
  }
  return held;
}

const ROUNDS = 3;
const ON_NODE = 1.5;
/** With so many neighbours on the lattice a pin is of it beyond doubt. */
const INNER = 7;
/** How far along the chain to both sides is looked. */
const WINDOW = 3;
const MOST_FELLOWS = 0.5;

function without(lattice: GrownLattice, released: ReadonlySet<number>): GrownLattice {
  const nodeOf = new Map([...lattice.nodeOf].filter(([pin]) => !released.has(pin)));
  return { ...lattice, nodeOf, pinAt: new Map([...nodeOf].map(([pin, node]) => [nodeKey(...node), pin])) };
}

const offNode = (field: Field, { frame, nodeOf }: GrownLattice, pin: number): number =>
  distance(field.pins[pin]!, latticeNode(frame, ...nodeOf.get(pin)!));

function crossing({ pins, closed }: Chain, members: ReadonlySet<number>): number[] {
  const n = pins.length;
  return pins.filter((pin, k) => {
    if (!members.has(pin)) return false;
    let [others, fellows] = [0, 0];
    for (let d = -WINDOW; d <= WINDOW; d++) {
      const other = closed ? pins[(k + d + n) % n] : pins[k + d];
      if (d === 0 || other === undefined) continue;
      others++;
      if (members.has(other)) fellows++;
    }
    return fellows < MOST_FELLOWS * others;
  });
}

/** A join as smooth as this between two pins off the lattice is no accident. */
const SMOOTH = 2.2;
/** Nearer to its node than this many standard deviations a pin is given the benefit: of normal pins two in three. */
const AT_NODE = 1.5;

/** Whether a pin lies smoothly between two near pins that are off the lattice, and not just on its node. */
function joinsOthers(
  field: Field,
  lattice: GrownLattice,
  pin: number,
  members: ReadonlySet<number>,
): boolean {
  const { frame, sigma } = lattice;
  const here = field.pins[pin]!;
  if (offNode(field, lattice, pin) < AT_NODE * sigma) return false;
  const reach = 1.15 * length(frame.a);
  const others = [...field.near[pin]!].filter(
    (other) => !members.has(other) && distance(here, field.pins[other]!) < reach,
  );
  return others.some((one, k) =>
    others.slice(k + 1).some((other) => tripleCost(field.pins[one]!, here, field.pins[other]!) < SMOOTH),
  );
}

/** A released pin that no line took after all may stand this many standard deviations from its node to come back. */
const BACK = 2.8;

/** Gives back to the lattices the pins they released that nothing else has a use for. */
export function reclaim(
  field: Field,
  before: readonly GrownLattice[],
  after: readonly GrownLattice[],
  isUsed: (pin: number) => boolean,
): GrownLattice[] {
  return after.map((lattice, k) => {
    const nodeOf = new Map(lattice.nodeOf);
    for (const [pin, node] of before[k]!.nodeOf) {
      if (nodeOf.has(pin) || isUsed(pin)) continue;
      if (offNode(field, before[k]!, pin) < BACK * lattice.sigma) nodeOf.set(pin, node);
    }
    return { ...lattice, nodeOf, pinAt: new Map([...nodeOf].map(([pin, node]) => [nodeKey(...node), pin])) };
  });
}
