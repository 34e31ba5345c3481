import type { Chain } from './chain.ts';
import { findChains } from './chains.ts';
import type { Field } from './field.ts';
import { type GrownLattice, neighboursAt, nodeKey } from './lattice-grow.ts';

/**
 * Takes out of a lattice the pins that rather belong to a line crossing it: a motif's outline passes close to some
 * nodes by chance. Such a pin stands at the lattice's rim, in a chain most of whose other pins are off the lattice.
 */
export function releaseCrossing(field: Field, lattices: readonly GrownLattice[]): GrownLattice[] {
  const members = new Set(lattices.flatMap(({ nodeOf }) => [...nodeOf.keys()]));
  const inner = new Set(
    lattices.flatMap(({ nodeOf, pinAt }) =>
      [...nodeOf].filter(([, [i, j]]) => neighboursAt(pinAt, i, j) >= INNER).map(([pin]) => pin),
    ),
  );
  const chains = findChains(field, (pin) => !inner.has(pin) && !field.doubled.has(pin));
  const released = new Set(chains.flatMap((chain) => crossing(chain, members)));
  if (released.size === 0) return [...lattices];
  return lattices.map((lattice) => {
    const nodeOf = new Map([...lattice.nodeOf].filter(([pin]) => !released.has(pin)));
    const pinAt = new Map([...nodeOf].map(([pin, node]) => [nodeKey(...node), pin]));
    return { ...lattice, nodeOf, pinAt };
  });
}

/** With so many neighbours on the lattice a pin is of it beyond doubt. */
const INNER = 7;
/** How far along the chain to both sides is looked. */
const WINDOW = 3;
const MOST_FELLOWS = 0.5;

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
