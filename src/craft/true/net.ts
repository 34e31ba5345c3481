import { latticeNode } from '#base/fit/lattice.ts';
import { chord, polarNode } from '#base/fit/polar.ts';
import { length, type Point } from '#base/geometry/point.ts';
import { type GrownLattice, nodeKey } from './lattice-grow.ts';
import { type GrownPolar, polarKey } from './polar-grow.ts';

export type Node = readonly [number, number];

/** What a lattice and a polar lattice have in common: nodes with neighbours on opposite sides. */
export interface Net {
  readonly id: string;
  readonly why: 'lattice' | 'polar';
  /** Standard deviation of a pin from its node, per coordinate. */
  readonly sigma: number;
  readonly members: Iterable<Node>;
  readonly memberCount: number;
  readonly isMember: (pin: number) => boolean;
  readonly keyOf: (node: Node) => number;
  /** Whether there is such a node at all, pinned or not. */
  readonly exists: (node: Node) => boolean;
  readonly isPinned: (node: Node) => boolean;
  readonly placeOf: (node: Node) => Point;
  /** The steps to one neighbour of each opposite pair. */
  readonly steps: (node: Node) => readonly Node[];
  /** Distance between neighbouring places near a node. */
  readonly spacingAt: (node: Node) => number;
}

const LATTICE_STEPS: readonly Node[] = [
  [1, 0],
  [0, 1],
  [1, -1],
  [1, 1],
];

export const latticeNet = ({ frame, sigma, nodeOf, pinAt }: GrownLattice, id: string): Net => ({
  id,
  why: 'lattice',
  sigma,
  members: [...nodeOf.values()],
  memberCount: nodeOf.size,
  isMember: (pin) => nodeOf.has(pin),
  keyOf: ([i, j]) => nodeKey(i, j),
  exists: () => true,
  isPinned: ([i, j]) => pinAt.has(nodeKey(i, j)),
  placeOf: ([i, j]) => latticeNode(frame, i, j),
  steps: () => LATTICE_STEPS,
  spacingAt: () => length(frame.a),
});

const ALTERNATING: readonly Node[] = [
  [0, 2],
  [1, 1],
  [1, -1],
  [2, 0],
];
const ALIGNED: readonly Node[] = [
  [0, 2],
  [1, 0],
  [1, 2],
  [1, -2],
];

/** Nodes are numbered by ring and half sector, so that rings turned by half a sector fall into step. */
export function polarNet({ frame, sigma, halves, nodeOf, pinAt }: GrownPolar, id: string): Net {
  const double = 2 * frame.sectors;
  const isRight = ([ring, half]: Node): boolean =>
    halves[ring] !== undefined && (half - halves[ring]) % 2 === 0;
  const sectorOf = ([ring, half]: Node): number => (half - halves[ring]!) / 2;
  return {
    id,
    why: 'polar',
    sigma,
    members: [...nodeOf.values()].map(([ring, sector]) => [ring, 2 * sector + halves[ring]!] as const),
    memberCount: nodeOf.size,
    isMember: (pin) => nodeOf.has(pin),
    keyOf: ([ring, half]) => ring * double + (((half % double) + double) % double),
    exists: isRight,
    isPinned: (node) => isRight(node) && pinAt.has(polarKey(frame, node[0], sectorOf(node))),
    placeOf: (node) => polarNode(frame, node[0], sectorOf(node)),
    steps: ([ring]) =>
      halves[ring + 1] === halves[ring] || halves[ring - 1] === halves[ring] ? ALIGNED : ALTERNATING,
    spacingAt: ([ring]) => {
      const between = Math.abs(frame.radii[ring]! - (frame.radii[ring + 1] ?? frame.radii[ring - 1]!));
      const along = chord(frame.radii[ring]!, frame.sectors);
      return Math.min(along, Math.hypot(along / 2, between));
    },
  };
}
