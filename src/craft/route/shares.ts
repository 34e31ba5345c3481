import { lieStraight } from '#base/fit/straight.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';
import { anchorPoint } from '#pattern/anchors.ts';
import type { PrickingPass } from '#pattern/order.ts';
import type { Pattern, RunRole } from '#pattern/pattern.ts';
import { pinIndex, pinsById } from '#pattern/pins.ts';
import type { Lattice, PolarLattice, Regularity } from '#pattern/structure.ts';
import { clusters } from './clusters.ts';
import { outsidePoints, stepBetween } from './triangulate.ts';

/** Pins that belong together in the work, before they are put in order. */
export interface RunShare {
  readonly kind: PrickingPass['kind'];
  readonly straight: boolean;
  readonly closed: boolean;
  readonly pins: readonly number[];
}

export interface LatticeShare {
  readonly kind: 'ground' | 'filling';
  readonly lattice: Lattice;
  /** Positions in `lattice.pins` that nothing before it took. */
  readonly wanted: readonly number[];
}

export interface Shares {
  readonly runs: readonly RunShare[];
  readonly lattices: readonly LatticeShare[];
  /** Of each polar ground its rings, the outermost first. */
  readonly rings: readonly (readonly number[])[];
  /** Pins of no run and no ground that lie along the outside: a headside that nobody saw as one curve. */
  readonly edges: readonly (readonly number[])[];
  /** All others. */
  readonly loose: readonly number[];
}

/**
 * Gives every pin to one share: first to the runs that the maker named, then to the lines and curves found, then to the
 * ground it is of, straight or round; the rest is loose. A found run gets the pins that are its own and, where it lies along the
 * outside, those of the ground too, because outside edges are pricked before the ground.
 */
export function shareOut(pattern: Pattern, regularity: Regularity): Shares {
  const taken = new Uint8Array(pattern.pins.length);
  const take = (indices: readonly number[], least: number): number[] => {
    const free = [...new Set(indices)].filter((index) => taken[index] === 0);
    if (free.length < least) return [];
    for (const index of free) taken[index] = 1;
    return free;
  };
  const runs = [...namedRuns(pattern), ...foundRuns(pattern.pins, regularity)]
    .sort((one, other) => RANK[one.kind] - RANK[other.kind])
    .map((run) => ({ ...run, pins: take(run.pins, LEAST_RUN) }))
    .filter((run) => run.pins.length > 0);
  const lattices = latticesByKind(pattern, regularity).flatMap(({ kind, lattice }) => {
    const wanted = [...lattice.pins.keys()].filter((at) => taken[lattice.pins[at]!] === 0);
    for (const at of wanted) taken[lattice.pins[at]!] = 1;
    return wanted.length === 0 ? [] : [{ kind, lattice, wanted }];
  });
  const rings = regularity.structures.flatMap((structure) =>
    structure.kind === 'polar' ? ringsOf(structure).map((ring) => take(ring, 1)) : [],
  );
  const rest = take([...pattern.pins.keys()], 0);
  const edges = looseEdges(rest, pattern.pins);
  const ofEdges = new Set(edges.flat());
  return {
    runs,
    lattices,
    rings: rings.filter((ring) => ring.length > 0),
    edges,
    loose: rest.filter((index) => !ofEdges.has(index)),
  };
}

/** Of the loose pins, those that follow one another along the outside, stretch by stretch. */
function looseEdges(rest: readonly number[], pins: readonly Point[]): number[][] {
  if (rest.length < LEAST_EDGE) return [];
  const outside = outsidePoints(pins, stepBetween(pins));
  const { groups } = clusters(
    rest.filter((index) => outside.has(index)),
    pins,
  );
  return groups.filter((group) => group.length >= LEAST_EDGE);
}

/** The order of the trade: outside edges and curves, the motif, its fillings, and last the ground. */
const RANK: Readonly<Record<PrickingPass['kind'], number>> = {
  'outside-edge': 0,
  curve: 1,
  motif: 2,
  filling: 3,
  ground: 4,
};

function namedRuns(pattern: Pattern): RunShare[] {
  const indexOf = pinIndex(pattern);
  return pattern.runs.map(({ role, shape, closed, pins: ids }) => ({
    kind: KIND_OF_ROLE[role],
    straight: shape === 'line',
    closed,
    pins: ids.flatMap((id) => indexOf.get(id) ?? []),
  }));
}

const KIND_OF_ROLE: Readonly<Record<RunRole, PrickingPass['kind']>> = {
  footside: 'outside-edge',
  headside: 'outside-edge',
  outline: 'curve',
  'trail-edge': 'curve',
  centre: 'motif',
  other: 'curve',
};

function foundRuns(pins: readonly Point[], { structures, structureOf }: Regularity): RunShare[] {
  const found = structures.flatMap((structure) => {
    if (structure.kind === 'polar') {
      const outermost = ringsOf(structure).find((ring) => ring.length > 0) ?? [];
      return [{ id: structure.id, straight: false, closed: true, pins: outermost, edgeOnly: true }];
    }
    if (structure.kind !== 'run') return [];
    const { id, shape, closed, spacing } = structure;
    const places = structure.pins.map((index) => pins[index]!);
    const straight = shape === 'line' || lieStraight(places, NEARLY * spacing);
    return [{ id, straight, closed, pins: structure.pins, edgeOnly: false }];
  });
  if (found.length === 0) return [];
  const step = usualStep(
    found.map((run) => run.pins),
    pins,
  );
  const outside = outsidePoints(pins, step);
  return found.flatMap(({ id, edgeOnly, ...run }): RunShare[] => {
    const outer = run.pins.filter((index) => outside.has(index)).length;
    if (outer >= MOSTLY * run.pins.length) return [{ ...run, kind: 'outside-edge' }];
    if (edgeOnly) return [];
    return [{ ...run, kind: 'curve', pins: run.pins.filter((index) => structureOf[index] === id) }];
  });
}

/** From the outermost ring inwards, each in order round the centre. */
function ringsOf({ radii, pins, nodes }: PolarLattice): number[][] {
  const rings = radii.map((radius) => ({ radius, members: [] as { pin: number; sector: number }[] }));
  for (const [at, pin] of pins.entries()) {
    const [ring, sector] = nodes[at]!;
    rings[ring]!.members.push({ pin, sector });
  }
  return rings
    .sort((one, other) => other.radius - one.radius)
    .map(({ members }) => members.sort((one, other) => one.sector - other.sector).map(({ pin }) => pin));
}

/** Median distance from pin to pin along the runs. */
function usualStep(runs: readonly (readonly number[])[], pins: readonly Point[]): number {
  const steps = runs.flatMap((run) => run.slice(1).map((to, at) => distance(pins[run[at]!]!, pins[to]!)));
  return steps.sort((one, other) => one - other)[steps.length >> 1] ?? 0;
}

/**
 * Ground or filling: as the areas say that most of its pins lie in; where none does, a lattice much smaller than the
 * largest fills a motif.
 */
function latticesByKind(pattern: Pattern, { structures }: Regularity) {
  const lattices = structures.filter((structure) => structure.kind === 'lattice');
  const largest = Math.max(0, ...lattices.map((lattice) => lattice.pins.length));
  const { areas, pins } = pattern;
  const byId = pinsById(pattern);
  const said = areas.flatMap(({ stitch, outline }) =>
    stitch === 'ground' || stitch === 'filling'
      ? [{ kind: stitch, outline: outline.map((anchor) => anchorPoint(byId, anchor)) }]
      : [],
  );
  return lattices.map((lattice): { kind: 'ground' | 'filling'; lattice: Lattice } => {
    const stride = Math.ceil(lattice.pins.length / SAMPLES);
    const sample = lattice.pins.filter((_, at) => at % stride === 0).map((index) => pins[index]!);
    const most = ({ outline }: { outline: readonly Point[] }) =>
      sample.filter((pin) => isInside(outline, pin)).length * 2 > sample.length;
    const bySize = lattice.pins.length * SMALL < largest ? 'filling' : 'ground';
    return { kind: said.find(most)?.kind ?? bySize, lattice };
  });
}

/** Fewer pins than this are no run worth following; they fall to what comes after. */
const LEAST_RUN = 2;

/** Fewer loose pins than this along the outside are a motif that stands there, not an edge. Our own choice. */
const LEAST_EDGE = 8;

/** Share of a run's pins that have to lie outside. Our own choice. */
const MOSTLY = 0.6;

/** A curve that stays within this share of its spacing of a line is pricked along a ruler. Our own choice. */
const NEARLY = 0.1;

/** How many times smaller than the largest lattice a filling is, where nothing says so. Our own choice. */
const SMALL = 4;

/** Pins looked at to tell which area a lattice lies in. */
const SAMPLES = 64;
