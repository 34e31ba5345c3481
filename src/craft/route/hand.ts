import { alongLine, fitStraight } from '#base/fit/straight.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import type { PrickingOrder, PrickingPass } from '#pattern/order.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Regularity } from '#pattern/structure.ts';
import { clusters } from './clusters.ts';
import { rulerAlong, rulerPasses } from './ruler.ts';
import { type RunShare, shareOut } from './shares.ts';
import { middleOf, walk } from './walk.ts';

/**
 * In which order a hand pricks the pattern, as the trade does it (common practice, no source): outside edges and curves
 * first, then the motif, its centre and its fillings, and last the ground along a ruler, line by line. Every pin comes
 * in exactly one pass; each pass begins near the end of the one before. n log n.
 */
export function handOrder(pattern: Pattern, regularity: Regularity): PrickingOrder {
  const { pins } = pattern;
  const { runs, lattices, rings, edges, loose } = shareOut(pattern, regularity);
  const { groups, scattered } = clusters(loose, pins);

  const passes: PrickingPass[] = [];
  const hand = () => pins[passes.at(-1)?.order.at(-1) ?? -1] ?? null;

  const pushRuns = (which: (run: RunShare) => boolean) => {
    for (const run of nearestNext(runs.filter(which), (run) => run.pins, pins, hand()))
      passes.push(runPass(run, pins, hand()));
  };
  const pushGroups = (
    kind: PrickingPass['kind'],
    near: readonly (readonly number[])[],
    rest: readonly number[],
  ) => {
    for (const group of [...nearestNext(near, (group) => group, pins, hand()), rest])
      if (group.length > 0) passes.push(walkPass(kind, group, pins, hand()));
  };
  pushRuns(straightEdge);
  pushRuns(roundEdge);
  pushGroups('outside-edge', edges, []);
  pushRuns(curve);
  pushRuns(centre);
  pushGroups('motif', groups, scattered);
  for (const kind of ['filling', 'ground'] as const) {
    const wanted = lattices.filter((share) => share.kind === kind);
    for (const { lattice, wanted: positions } of nearestNext(
      wanted,
      ({ lattice }) => lattice.pins,
      pins,
      hand(),
    ))
      passes.push(...towards(hand(), rulerPasses(lattice, positions, pins, kind), pins));
  }
  for (const ring of rings)
    passes.push({ kind: 'ground', ruler: null, order: startingNear(ring, pins, hand()) });
  return { passes };
}

/** The footside leads: it is the line that the rest of the pattern is measured from. */
const straightEdge = ({ kind, straight }: RunShare) => kind === 'outside-edge' && straight;
const roundEdge = ({ kind, straight }: RunShare) => kind === 'outside-edge' && !straight;
const curve = ({ kind }: RunShare) => kind === 'curve';
const centre = ({ kind }: RunShare) => kind === 'motif';

function runPass(
  { kind, straight, closed, pins: run }: RunShare,
  pins: readonly Point[],
  from: Point | null,
): PrickingPass {
  if (!straight)
    return { kind, ruler: null, order: closed ? startingNear(run, pins, from) : endFirst(run, pins, from) };
  const line = fitStraight(run.map((index) => pins[index]!));
  const order = endFirst(
    run.toSorted((one, other) => alongLine(line, pins[one]!) - alongLine(line, pins[other]!)),
    pins,
    from,
  );
  return { kind, ruler: rulerAlong(line, order, pins), order };
}

function walkPass(
  kind: PrickingPass['kind'],
  group: readonly number[],
  pins: readonly Point[],
  from: Point | null,
): PrickingPass {
  const order = walk(
    group.map((index) => pins[index]!),
    from,
  ).map((at) => group[at]!);
  return { kind, ruler: null, order };
}

/** An open line or curve may be pricked from either end. */
function endFirst(run: readonly number[], pins: readonly Point[], from: Point | null): number[] {
  if (from === null) return [...run];
  const [first, last] = [pins[run[0]!]!, pins[run.at(-1)!]!];
  return distance(from, last) < distance(from, first) ? run.toReversed() : [...run];
}

/** A closed one from any of its pins. */
function startingNear(run: readonly number[], pins: readonly Point[], from: Point | null): number[] {
  if (from === null) return [...run];
  const away = run.map((index) => distance(from, pins[index]!));
  const start = away.reduce((best, one, at) => (one < away[best]! ? at : best), 0);
  return [...run.slice(start), ...run.slice(0, start)];
}

/** A sweep may begin on either side and at either end of its lines; it stays a sweep to and fro. */
function towards(from: Point | null, sweep: PrickingPass[], pins: readonly Point[]): PrickingPass[] {
  if (from === null) return sweep;
  const turned = sweep.map((pass) => ({
    ...pass,
    ruler: pass.ruler && { from: pass.ruler.to, to: pass.ruler.from },
    order: pass.order.toReversed(),
  }));
  const ways = [sweep, turned, sweep.toReversed(), turned.toReversed()];
  const reach = (way: readonly PrickingPass[]) => distance(from, pins[way[0]!.order[0]!]!);
  return ways.reduce((best, way) => (reach(way) < reach(best) ? way : best));
}

/** The things in an order in which each lies near the one before. */
function nearestNext<Thing>(
  things: readonly Thing[],
  pinsOf: (thing: Thing) => readonly number[],
  pins: readonly Point[],
  from: Point | null,
): Thing[] {
  const middles = things.map((thing) => middleOf(pinsOf(thing).map((index) => pins[index]!)));
  return walk(middles, from).map((at) => things[at]!);
}
