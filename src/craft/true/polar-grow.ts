import { type PolarFrame, polarNode, refinePolar } from '#base/fit/polar.ts';
import { deviationOfDistances, median } from '#base/fit/robust.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import type { Field } from './field.ts';
import { halfSectorPhase, type PolarSeed } from './polar-seed.ts';

/** A polar lattice with the pins that stand on it: at most one a node. Rings go from the centre outward. */
export interface GrownPolar {
  readonly frame: PolarFrame;
  readonly sigma: number;
  readonly tolerance: number;
  /** For each ring 1 where it is turned by half a sector against the first kind, else 0. */
  readonly halves: readonly (0 | 1)[];
  readonly pinAt: ReadonlyMap<number, number>;
  readonly nodeOf: ReadonlyMap<number, readonly [number, number]>;
}

/** One number for a node of a polar lattice, so that nodes can be kept in a map. */
export const polarKey = ({ sectors }: PolarFrame, ring: number, sector: number): number =>
  ring * sectors + (((sector % sectors) + sectors) % sectors);

/** Lays rings through the pins round a guessed centre and refits them together; null where too few pins agree. */
export function growPolar(field: Field, seed: PolarSeed, candidates: readonly number[]): GrownPolar | null {
  const seen = sectorsSeen(field, seed, candidates);
  let state = firstRings(field, seed, candidates, seen);
  if (state === null || state.frame.radii.length > MOST_RINGS) return null;
  let sigma = 0;
  let tolerance = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const arc = (2 * Math.PI * median(state.frame.radii)) / state.frame.sectors;
    tolerance = round === 0 ? 0.35 * arc : Math.max(TIGHT * sigma, ROUNDING * arc);
    const nodes = assign(field, state, candidates, tolerance);
    const strict = round > 0;
    state = keepRings(state, goodRings(field, state, candidates, nodes, tolerance, seen, strict));
    const linked = dropLonely(state, assign(field, state, candidates, tolerance));
    const held = new Set([...linked.values()].map(([ring]) => ring));
    state = keepRings(state, (ring) => held.has(ring));
    if (state.frame.radii.length < LEAST_RINGS || linked.size < LEAST_MEMBERS) return null;
    const members = [...dropLonely(state, assign(field, state, candidates, tolerance))];
    const points = members.map(([pin]) => field.pins[pin]!);
    state = {
      ...state,
      frame: refinePolar(
        state.frame,
        points,
        members.map(([, node]) => node),
      ),
    };
    sigma = deviationOfDistances(
      members.map(([pin, [ring, sector]]) =>
        distance(field.pins[pin]!, polarNode(state!.frame, ring, sector)),
      ),
    );
  }
  const nodeOf = dropLonely(state, assign(field, state, candidates, tolerance));
  if (nodeOf.size < LEAST_SHARE * candidates.length) return null;
  const pinAt = new Map(
    [...nodeOf].map(([pin, [ring, sector]]) => [polarKey(state.frame, ring, sector), pin]),
  );
  return { ...state, sigma, tolerance, pinAt, nodeOf };
}

const ROUNDS = 6;
/** Of normal pins one in 700 stands farther than this many standard deviations from its node. */
const TIGHT = 3.6;
const ROUNDING = 0.004;
const LEAST_RINGS = 3;
/** More rings than any mat has are a sign that there are none; the fit would cost the cube of their number. */
const MOST_RINGS = 240;
const LEAST_IN_RING = 6;
/** A ring may have openings, but fewer pins than this share of its places are there by chance. */
const LEAST_FULL = 0.24;
/** Where fewer of the pins round the centre stand on the rings, there is no polar lattice. */
const LEAST_SHARE = 0.35;

/** How many of the sectors hold any pin: all of them in a mat, few in a collar or a fan. */
function sectorsSeen(field: Field, { centre, sectors }: PolarSeed, candidates: readonly number[]): number {
  const held = candidates.map((pin) => {
    const { x, y } = field.pins[pin]!;
    const sector = Math.round((Math.atan2(y - centre.y, x - centre.x) * sectors) / (2 * Math.PI));
    return (sector + sectors) % sectors;
  });
  return new Set(held).size;
}

interface Rings {
  readonly frame: PolarFrame;
  readonly halves: readonly (0 | 1)[];
}

function firstRings(
  field: Field,
  { centre, sectors }: PolarSeed,
  candidates: readonly number[],
  seen: number,
): Rings | null {
  const pins = candidates.map((pin) => field.pins[pin]!);
  const { share, phase } = halfSectorPhase(pins, centre, sectors);
  if (share < 0.1) return null;
  const rings: { radius: number; half: 0 | 1 }[] = [];
  for (const half of [0, 1] as const) {
    const radii = pins.flatMap(({ x, y }) => {
      const radius = Math.hypot(x - centre.x, y - centre.y);
      const turn = (sectors * Math.atan2(y - centre.y, x - centre.x)) / (2 * Math.PI) - phase - half / 2;
      return Math.abs(turn - Math.round(turn)) < 0.25 ? [radius] : [];
    });
    for (const radius of crowdedRadii(radii, seen, 0.22 * field.spacing)) rings.push({ radius, half });
  }
  rings.sort((p, q) => p.radius - q.radius);
  const frame = {
    centre,
    sectors,
    radii: rings.map(({ radius }) => radius),
    phases: rings.map(({ half }) => (2 * Math.PI * (phase + half / 2)) / sectors),
  };
  return { frame, halves: rings.map(({ half }) => half) };
}

/** Radii at which pins crowd: tops of their density, seen through a bell of the given width. */
function crowdedRadii(radii: readonly number[], sectors: number, width: number): number[] {
  const sorted = Float64Array.from(radii).sort();
  if (sorted.length === 0 || !(width > 0)) return [];
  const step = width / 4;
  const first = sorted[0]!;
  const bins = Math.min(MOST_BINS, Math.ceil((sorted.at(-1)! - first) / step) + 2);
  const density = new Float64Array(bins);
  for (const radius of sorted) {
    const middle = Math.round((radius - first) / step);
    for (let bin = Math.max(0, middle - 14); bin <= Math.min(bins - 1, middle + 14); bin++) {
      density[bin]! += Math.exp(-0.5 * ((first + bin * step - radius) / width) ** 2);
    }
  }
  const tops: number[] = [];
  for (let bin = 0; bin < bins; bin++) {
    const here = density[bin]!;
    if (here < 0.12 * sectors || here < (density[bin - 1] ?? 0) || here <= (density[bin + 1] ?? 0)) continue;
    tops.push(first + bin * step);
  }
  return tops;
}

const MOST_BINS = 200_000;

/** Each pin to its nearest node within reach; a node keeps its nearest pin. */
function assign(
  field: Field,
  { frame }: Rings,
  candidates: readonly number[],
  reach: number,
): Map<number, readonly [number, number]> {
  const best = new Map<number, { pin: number; off: number; node: readonly [number, number] }>();
  for (const pin of candidates) {
    const near = nearestNode(frame, field.pins[pin]!, reach);
    if (near === null) continue;
    const key = polarKey(frame, ...near.node);
    const rival = best.get(key);
    if (rival === undefined || near.off < rival.off) best.set(key, { pin, ...near });
  }
  return new Map([...best.values()].map(({ pin, node }) => [pin, node]));
}

function nearestNode(
  frame: PolarFrame,
  point: Point,
  reach: number,
): { off: number; node: readonly [number, number] } | null {
  const { centre, radii, phases, sectors } = frame;
  const radius = Math.hypot(point.x - centre.x, point.y - centre.y);
  const angle = Math.atan2(point.y - centre.y, point.x - centre.x);
  let best: { off: number; node: readonly [number, number] } | null = null;
  for (
    let ring = firstAbove(radii, radius - reach);
    ring < radii.length && radii[ring]! <= radius + reach;
    ring++
  ) {
    const sector = Math.round(((angle - phases[ring]!) * sectors) / (2 * Math.PI));
    const off = distance(point, polarNode(frame, ring, sector));
    if (off > reach || (best !== null && off >= best.off)) continue;
    best = { off, node: [ring, ((sector % sectors) + sectors) % sectors] };
  }
  return best;
}

function firstAbove(sorted: readonly number[], value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function keepRings({ frame, halves }: Rings, isGood: (ring: number) => boolean): Rings {
  const keep = frame.radii.map((_, ring) => isGood(ring));
  const kept = <Value>(values: readonly Value[]): Value[] => values.filter((__, ring) => keep[ring]);
  return { frame: { ...frame, radii: kept(frame.radii), phases: kept(frame.phases) }, halves: kept(halves) };
}

/**
 * Which rings are rings: enough of their places hold a pin, and hardly a pin of their radius stands between the places.
 * Pins of a motif that crosses a radius stand anywhere along it.
 */
function goodRings(
  field: Field,
  { frame }: Rings,
  candidates: readonly number[],
  nodes: ReadonlyMap<number, readonly [number, number]>,
  tolerance: number,
  seen: number,
  strict: boolean,
): (ring: number) => boolean {
  const members = frame.radii.map(() => 0);
  const between = frame.radii.map(() => 0);
  const along = frame.radii.map(() => 0);
  for (const pin of candidates) {
    const point = field.pins[pin]!;
    const node = nodes.get(pin);
    if (node !== undefined) {
      const place = polarNode(frame, ...node);
      const turn =
        (point.x - place.x) * (place.y - frame.centre.y) - (point.y - place.y) * (place.x - frame.centre.x);
      along[node[0]]! += (turn / frame.radii[node[0]]!) ** 2;
      members[node[0]]!++;
      continue;
    }
    const radius = distance(point, frame.centre);
    const reach = 0.6 * tolerance;
    const first = firstAbove(frame.radii, radius - reach);
    for (let ring = first; ring < frame.radii.length && frame.radii[ring]! < radius + reach; ring++)
      between[ring]!++;
  }
  return (ring) => {
    const count = members[ring]!;
    if (count < Math.max(LEAST_IN_RING, LEAST_FULL * seen)) return false;
    if (!strict) return true;
    // Spread evenly within reach, squares along the ring would average a quarter of the reach's square.
    return (
      between[ring]! <= MOST_BETWEEN * count && along[ring]! / count < MOST_SPREAD * tolerance * tolerance
    );
  };
}

const MOST_BETWEEN = 0.3;
const MOST_SPREAD = 0.16;
const LEAST_MEMBERS = 30;
const LEAST_NEIGHBOURS = 3;

/** Steps, in rings and half sectors, to the places that may be neighbours, whether rings alternate or not. */
const ROUND_PLACE = [
  [0, 2],
  [0, -2],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
  [1, 0],
  [-1, 0],
  [2, 0],
  [-2, 0],
] as const;

function dropLonely(
  { frame, halves }: Rings,
  nodes: Map<number, readonly [number, number]>,
): Map<number, readonly [number, number]> {
  const double = 2 * frame.sectors;
  const key = (ring: number, half: number): number => ring * double + (((half % double) + double) % double);
  const halfOf = ([ring, sector]: readonly [number, number]): number => 2 * sector + halves[ring]!;
  for (let round = 0; round < 8; round++) {
    const held = new Set([...nodes.values()].map((node) => key(node[0], halfOf(node))));
    const lonely = [...nodes].filter(([, node]) => {
      const count = ROUND_PLACE.filter(
        ([rings, half]) => node[0] + rings >= 0 && held.has(key(node[0] + rings, halfOf(node) + half)),
      ).length;
      return count < LEAST_NEIGHBOURS;
    });
    if (lonely.length === 0) break;
    for (const [pin] of lonely) nodes.delete(pin);
  }
  return nodes;
}
