import type { Structure } from './structure.ts';

/** Indices of the pins that make up a structure, each once. */
export function pinsOfStructure(structure: Structure): readonly number[] {
  switch (structure.kind) {
    case 'lattice':
    case 'polar':
    case 'run':
      return structure.pins;
    case 'repeat':
      return each(structure.tracks);
    case 'turn':
      return each(structure.orbits);
    case 'mirror':
      return each(structure.pairs);
  }
}

const each = (groups: readonly (readonly (number | null)[])[]): number[] => [
  ...new Set(groups.flat().filter((pin) => pin !== null)),
];
