import { latticeNode } from '#base/fit/lattice.ts';
import { polarNode } from '#base/fit/polar.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import type {
  Lattice,
  MirrorSymmetry,
  MissingPin,
  PolarLattice,
  Regularity,
  RepeatStructure,
  RunStructure,
  Structure,
  TurnSymmetry,
} from '#pattern/structure.ts';
import type { Field } from './field.ts';
import type { GrownLattice } from './lattice-grow.ts';
import { mirroredPlace, type TrueMirror } from './mirror.ts';
import { missingInCopies, missingInMirror, missingInRun, withoutTwins } from './missing.ts';
import { missingInNet } from './missing-net.ts';
import { latticeNet, polarNet } from './net.ts';
import type { GrownPolar } from './polar-grow.ts';
import type { Copies } from './repeats.ts';
import type { TrueRun } from './runs.ts';
import { strayPins } from './stray.ts';
import { witnesses } from './witness.ts';

/** All that was found, before it is put into the pattern's own words. */
export interface Findings {
  readonly field: Field;
  readonly polars: readonly GrownPolar[];
  readonly lattices: readonly GrownLattice[];
  readonly runs: readonly TrueRun[];
  readonly copies: readonly Copies[];
  /** Places of pins once all their copies are used together. */
  readonly folded: ReadonlyMap<number, { readonly place: Point; readonly copies: number }>;
  readonly mirror: TrueMirror | null;
  /** The pattern is exact: nothing is to move. */
  readonly drafted: boolean;
}

/** Structures, and for each pin the first of them that places it: lattice, polar lattice, run, repeat, turn or mirror. */
export function assemble(findings: Findings): Regularity {
  const { field, polars, lattices, runs, copies, folded, mirror, drafted } = findings;
  const structures: Structure[] = [];
  const structureOf = new Array<string | null>(field.pins.length).fill(null);
  const places = [...field.pins];
  const missing: MissingPin[] = [];
  const ask = witnesses(field, copies, mirror);
  const put = (pin: number, id: string, place: Point): void => {
    if (structureOf[pin] !== null) return;
    structureOf[pin] = id;
    if (!drafted) places[pin] = place;
  };
  lattices.forEach((grown, k) => {
    const id = `lattice-${k + 1}`;
    structures.push(latticeStructure(field, grown, id));
    for (const [pin, [i, j]] of grown.nodeOf) put(pin, id, latticeNode(grown.frame, i, j));
    missing.push(...missingInNet(field, latticeNet(grown, id), ask));
  });
  polars.forEach((grown, k) => {
    const id = `polar-${k + 1}`;
    structures.push(polarStructure(field, grown, id));
    for (const [pin, [ring, sector]] of grown.nodeOf) put(pin, id, polarNode(grown.frame, ring, sector));
    missing.push(...missingInNet(field, polarNet(grown, id), ask));
  });
  runs.forEach((run, k) => {
    const id = `run-${k + 1}`;
    structures.push(runStructure(field, run, id));
    run.chain.pins.forEach((pin, at) => {
      put(pin, id, run.fit.places[at]!);
    });
    missing.push(...missingInRun(field, run, id, ask));
  });
  copies.forEach((one, k) => {
    const id = `${one.motion.kind}-${k + 1}`;
    structures.push(copiesStructure(field, one, folded, id));
    for (const track of one.tracks) {
      for (const pin of track.values()) put(pin, id, folded.get(pin)!.place);
    }
    missing.push(...missingInCopies(field, one, folded, id, ask));
  });
  if (mirror !== null) {
    const id = 'mirror-1';
    structures.push(mirrorStructure(field, mirror, id));
    for (const [pin, partner] of mirror.pairs) {
      put(pin, id, mirroredPlace(field, mirror, pin, partner));
      put(partner, id, mirroredPlace(field, mirror, partner, pin));
    }
    missing.push(...missingInMirror(field, mirror, (pin) => structureOf[pin] === null, id, ask));
  }
  const stray = strayPins(field, lattices, structureOf);
  return { structures, structureOf, places, missing: withoutTwins(missing, field.spacing), stray };
}

const rmsOf = (field: Field, moves: readonly (readonly [number, Point])[]): number => {
  let squares = 0;
  for (const [pin, place] of moves) squares += distance(field.pins[pin]!, place) ** 2;
  return Math.sqrt(squares / moves.length);
};

function latticeStructure(field: Field, { frame, nodeOf }: GrownLattice, id: string): Lattice {
  const members = [...nodeOf].sort(([p], [q]) => p - q);
  const rms = rmsOf(
    field,
    members.map(([pin, node]) => [pin, latticeNode(frame, ...node)]),
  );
  const pins = members.map(([pin]) => pin);
  return { kind: 'lattice', id, ...frame, pins, nodes: members.map(([, node]) => node), rms };
}

function polarStructure(field: Field, { frame, nodeOf }: GrownPolar, id: string): PolarLattice {
  const members = [...nodeOf].sort(([p], [q]) => p - q);
  const rms = rmsOf(
    field,
    members.map(([pin, node]) => [pin, polarNode(frame, ...node)]),
  );
  const pins = members.map(([pin]) => pin);
  return { kind: 'polar', id, ...frame, pins, nodes: members.map(([, node]) => node), rms };
}

/** A run whose spacings differ by less than this part of them is even. */
const EVEN = 0.04;

function runStructure(field: Field, { chain, fit }: TrueRun, id: string): RunStructure {
  const spacings = fit.places.slice(1).map((place, k) => distance(place, fit.places[k]!) / chain.steps[k]!);
  const spacing = spacings.reduce((sum, value) => sum + value, 0) / spacings.length;
  const spread = Math.sqrt(
    spacings.reduce((sum, value) => sum + (value - spacing) ** 2, 0) / spacings.length,
  );
  const rms = rmsOf(
    field,
    chain.pins.map((pin, k) => [pin, fit.places[k]!]),
  );
  const even = spread < EVEN * spacing;
  return { kind: 'run', id, shape: fit.shape, closed: chain.closed, even, spacing, pins: chain.pins, rms };
}

function copiesStructure(
  field: Field,
  { motion, tracks }: Copies,
  folded: Findings['folded'],
  id: string,
): RepeatStructure | TurnSymmetry {
  const copies =
    motion.kind === 'turn' ? motion.order : 1 + Math.max(...tracks.map((track) => Math.max(...track.keys())));
  const rows = tracks.map((track) => Array.from({ length: copies }, (_, copy) => track.get(copy) ?? null));
  const rms = rmsOf(
    field,
    tracks.flatMap((track) =>
      [...track.values()].map((pin): [number, Point] => [pin, folded.get(pin)!.place]),
    ),
  );
  return motion.kind === 'turn'
    ? { kind: 'turn', id, centre: motion.centre, order: motion.order, orbits: rows, rms }
    : { kind: 'repeat', id, step: motion.step, copies, tracks: rows, rms };
}

function mirrorStructure(field: Field, mirror: TrueMirror, id: string): MirrorSymmetry {
  const { through, direction, pairs, alone } = mirror;
  const moves = pairs.flatMap(([pin, partner]): [number, Point][] => [
    [pin, mirroredPlace(field, mirror, pin, partner)],
    [partner, mirroredPlace(field, mirror, partner, pin)],
  ]);
  const all = [...pairs, ...alone.map((pin) => [pin, null] as const)];
  return { kind: 'mirror', id, through, direction, pairs: all, rms: rmsOf(field, moves) };
}
