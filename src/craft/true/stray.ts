import { latticePlace } from '#base/fit/lattice.ts';
import type { Field } from './field.ts';
import { type GrownLattice, neighboursAt, nodeKey } from './lattice-grow.ts';

/**
 * Pins that belong to nothing and stand in the way of something: exactly on another pin, or between the pins of a
 * whole piece of ground.
 */
export function strayPins(
  field: Field,
  lattices: readonly GrownLattice[],
  structureOf: readonly (string | null)[],
): number[] {
  const stray = new Set(field.doubled);
  for (const { frame, nodeOf, pinAt } of lattices) {
    const asked = new Set<number>();
    for (const member of nodeOf.keys()) {
      for (const pin of field.near[member]!.subarray(0, 4)) {
        if (structureOf[pin] !== null || asked.has(pin)) continue;
        asked.add(pin);
        const place = latticePlace(frame, field.pins[pin]!);
        const i = Math.round(place.i);
        const j = Math.round(place.j);
        if (pinAt.has(nodeKey(i, j)) && neighboursAt(pinAt, i, j) >= 7) stray.add(pin);
      }
    }
  }
  return [...stray].sort((p, q) => p - q);
}
