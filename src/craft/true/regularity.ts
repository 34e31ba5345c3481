import { latticeNode } from '#base/fit/lattice.ts';
import { quantile } from '#base/fit/robust.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { type Progress, silent } from '#base/progress.ts';
import type { Lattice, MissingPin, Regularity, RunStructure, Structure } from '#pattern/structure.ts';
import { findChains } from './chains.ts';
import { type Field, fieldOf } from './field.ts';
import type { GrownLattice } from './lattice-grow.ts';
import { findLattices } from './lattices.ts';
import { missingInLattice, missingInRun } from './missing.ts';
import { fitRuns, type TrueRun } from './runs.ts';
import { strayPins } from './stray.ts';

export interface RegularityOptions {
  readonly progress?: Progress;
}

/**
 * What the pins meant: the regular structures among them, where each pin should stand, which pins lack and which
 * seem stray. Pins in no structure keep exactly their place. Cost grows about as n log n.
 */
export function findRegularity(pins: readonly Point[], options: RegularityOptions = {}): Regularity {
  const progress = options.progress ?? silent;
  progress('true', 0);
  const field = fieldOf(pins);
  const free = (pin: number): boolean => !field.doubled.has(pin);
  const lattices = findLattices(field, free);
  progress('true', 0.4);
  const inLattice = new Set(lattices.flatMap((lattice) => [...lattice.nodeOf.keys()]));
  const chains = findChains(field, (pin) => free(pin) && !inLattice.has(pin));
  progress('true', 0.6);
  const { runs, quietest } = fitRuns(field, chains, jitterOf(lattices));
  progress('true', 0.9);
  const regularity = assemble(field, lattices, runs, (quietest ?? 0) < DRAFTED * field.spacing);
  progress('true', 1);
  return regularity;
}

/** Jitter below this part of the spacing is no hand's: the pattern was drafted, and stays as it is. */
const DRAFTED = 0.002;

/** The jitter that most lattice pins agree on; null where there is no lattice. */
function jitterOf(lattices: readonly GrownLattice[]): number | null {
  const each = lattices.flatMap(({ sigma, nodeOf }) => new Array<number>(nodeOf.size).fill(sigma));
  return each.length === 0 ? null : quantile(each, 0.5);
}

function assemble(
  field: Field,
  lattices: readonly GrownLattice[],
  runs: readonly TrueRun[],
  drafted: boolean,
): Regularity {
  const structures: Structure[] = [];
  const structureOf = new Array<string | null>(field.pins.length).fill(null);
  const places = [...field.pins];
  const missing: MissingPin[] = [];
  const put = (pin: number, id: string, place: Point): void => {
    if (structureOf[pin] !== null) return;
    structureOf[pin] = id;
    if (!drafted) places[pin] = place;
  };
  lattices.forEach((grown, k) => {
    const id = `lattice-${k + 1}`;
    structures.push(latticeStructure(field, grown, id));
    for (const [pin, [i, j]] of grown.nodeOf) put(pin, id, latticeNode(grown.frame, i, j));
    missing.push(...missingInLattice(field, grown, id));
  });
  runs.forEach((run, k) => {
    const id = `run-${k + 1}`;
    structures.push(runStructure(run, id));
    run.chain.pins.forEach((pin, at) => {
      put(pin, id, run.fit.places[at]!);
    });
    missing.push(...missingInRun(field, run, id));
  });
  return { structures, structureOf, places, missing, stray: strayPins(field, lattices, structureOf) };
}

function latticeStructure(field: Field, { frame, nodeOf }: GrownLattice, id: string): Lattice {
  const pins = [...nodeOf.keys()].sort((p, q) => p - q);
  const nodes = pins.map((pin) => nodeOf.get(pin)!);
  let squares = 0;
  pins.forEach((pin, k) => {
    squares += distance(field.pins[pin]!, latticeNode(frame, ...nodes[k]!)) ** 2;
  });
  return { kind: 'lattice', id, ...frame, pins, nodes, rms: Math.sqrt(squares / pins.length) };
}

/** A run whose spacings differ by less than this part of them is even. */
const EVEN = 0.04;

function runStructure({ chain, fit }: TrueRun, id: string): RunStructure {
  const spacings = fit.places.slice(1).map((place, k) => distance(place, fit.places[k]!) / chain.steps[k]!);
  const spacing = spacings.reduce((sum, value) => sum + value, 0) / spacings.length;
  const spread = Math.sqrt(
    spacings.reduce((sum, value) => sum + (value - spacing) ** 2, 0) / spacings.length,
  );
  return {
    kind: 'run',
    id,
    shape: fit.shape,
    closed: chain.closed,
    even: spread < EVEN * spacing,
    spacing,
    pins: chain.pins,
    rms: Math.sqrt(fit.squares / chain.pins.length),
  };
}
