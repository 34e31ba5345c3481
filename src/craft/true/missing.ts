import { latticeNode } from '#base/fit/lattice.ts';
import { distance, length, type Point } from '#base/geometry/point.ts';
import type { MissingPin } from '#pattern/structure.ts';
import { type Field, pinsWithin } from './field.ts';
import { type GrownLattice, nodeKey, ROUND_NODE } from './lattice-grow.ts';
import type { TrueRun } from './runs.ts';

/** Opposite pairs of steps round a node; the first two along the lattice's own rows. */
const PAIRS = [
  [1, 0],
  [0, 1],
  [1, -1],
  [1, 1],
] as const;

/** A pin this part of a spacing from an empty place fills it, whatever it belongs to. */
const FILLED = 0.55;

/** Empty nodes whose neighbours on opposite sides are all there, as far as a hole of one or two nodes lets them. */
export function missingInLattice(
  field: Field,
  { frame, pinAt, nodeOf }: GrownLattice,
  id: string,
): MissingPin[] {
  const empty = new Map<number, readonly [number, number]>();
  for (const [i, j] of nodeOf.values()) {
    for (const [di, dj] of PAIRS) {
      for (const sign of [-1, 1]) {
        const node = [i + sign * di, j + sign * dj] as const;
        if (!pinAt.has(nodeKey(...node))) empty.set(nodeKey(...node), node);
      }
    }
  }
  const openings = openingNodes(empty);
  const missing: MissingPin[] = [];
  const reach = FILLED * length(frame.a);
  for (const [key, [i, j]] of empty) {
    if (openings.has(key)) continue;
    const pairs = PAIRS.filter(
      ([di, dj]) => pinAt.has(nodeKey(i + di, j + dj)) && pinAt.has(nodeKey(i - di, j - dj)),
    );
    if (pairs.length < 3) continue;
    const place = latticeNode(frame, i, j);
    if (pinsWithin(field, place, reach).length > 0) continue;
    missing.push({ ...place, confidence: pairs.length === 4 ? 0.95 : 0.75, structure: id, why: 'lattice' });
  }
  return missing;
}

/** More lacking nodes side by side than this were left out on purpose. */
const MOST_LACKING = 2;

/** Empty nodes that hang together with too many others to have been forgotten. */
function openingNodes(empty: ReadonlyMap<number, readonly [number, number]>): Set<number> {
  const seen = new Set<number>();
  const openings = new Set<number>();
  for (const start of empty.keys()) {
    if (seen.has(start)) continue;
    const group = [start];
    seen.add(start);
    for (const key of group) {
      const [i, j] = empty.get(key)!;
      for (const [di, dj] of ROUND_NODE) {
        const next = nodeKey(i + di, j + dj);
        if (!empty.has(next) || seen.has(next)) continue;
        seen.add(next);
        group.push(next);
      }
    }
    if (group.length > MOST_LACKING) for (const key of group) openings.add(key);
  }
  return openings;
}

/** The gaps in a run that no other pin fills. */
export function missingInRun(field: Field, { chain, fit }: TrueRun, id: string): MissingPin[] {
  return fit.gaps.flatMap(({ after, place }) => {
    const before = fit.places[after]!;
    const spacing = distance(before, place);
    if (nearest(field, place, spacing) < 0.7 * spacing) return [];
    return [{ ...place, confidence: chain.pins.length >= 8 ? 0.8 : 0.6, structure: id, why: 'run' as const }];
  });
}

function nearest(field: Field, place: Point, reach: number): number {
  let least = Infinity;
  for (const pin of pinsWithin(field, place, reach))
    least = Math.min(least, distance(place, field.pins[pin]!));
  return least;
}
