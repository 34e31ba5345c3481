import type { Point } from '#base/geometry/point.ts';
import type { Regularity, Structure } from '#pattern/structure.ts';

/** Indices of the pins from left to right, so that what is found does not depend on the order they were given in. */
export const leftToRight = (pins: readonly Point[]): number[] =>
  pins.map((_, pin) => pin).sort((p, q) => pins[p]!.x - pins[q]!.x || pins[p]!.y - pins[q]!.y || p - q);

/** What was found about pins in the order `order`, told of the pins as they were given. */
export function inGivenOrder(found: Regularity, order: readonly number[]): Regularity {
  const places = new Array<Point>(order.length);
  const structureOf = new Array<string | null>(order.length);
  order.forEach((pin, k) => {
    places[pin] = found.places[k]!;
    structureOf[pin] = found.structureOf[k]!;
  });
  const given = (pin: number): number => order[pin]!;
  return {
    ...found,
    places,
    structureOf,
    structures: found.structures.map((structure) => renamed(structure, given)),
    stray: found.stray.map(given).sort((p, q) => p - q),
  };
}

function renamed(structure: Structure, given: (pin: number) => number): Structure {
  const orNull = (pin: number | null): number | null => (pin === null ? null : given(pin));
  switch (structure.kind) {
    case 'lattice':
    case 'polar':
    case 'run':
      return { ...structure, pins: structure.pins.map(given) };
    case 'repeat':
      return { ...structure, tracks: structure.tracks.map((track) => track.map(orNull)) };
    case 'turn':
      return { ...structure, orbits: structure.orbits.map((orbit) => orbit.map(orNull)) };
    case 'mirror':
      return { ...structure, pairs: structure.pairs.map(([p, q]) => [given(p), orNull(q)]) };
  }
}
