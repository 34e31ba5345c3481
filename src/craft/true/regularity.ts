import { quantile } from '#base/fit/robust.ts';
import type { Point } from '#base/geometry/point.ts';
import { type Progress, silent } from '#base/progress.ts';
import type { Regularity } from '#pattern/structure.ts';
import { assemble } from './assemble.ts';
import { findChains } from './chains.ts';
import { reclaim, releaseCrossing } from './contest.ts';
import { stepsRecur } from './exact.ts';
import { type Field, fieldOf, movedField } from './field.ts';
import { findLattices } from './lattices.ts';
import { findMirror } from './mirror.ts';
import { inGivenOrder, leftToRight } from './order.ts';
import type { KnownRound } from './polar-seed.ts';
import { findPolars } from './polars.ts';
import { type Copies, findRepeat, findTurn, foldedPlaces } from './repeats.ts';
import { fitRuns, type TrueRun } from './runs.ts';
import { jitterAlong } from './steadiness.ts';

export interface RegularityOptions {
  /** Round centres that are known beforehand (`roundsOf`). */
  readonly rounds?: readonly KnownRound[];
  readonly progress?: Progress;
}

/**
 * What the pins meant: the regular structures among them, where each pin should stand, which pins lack and which
 * seem stray. Pins in no structure keep exactly their place. Cost grows about as n log n.
 */
export function findRegularity(pins: readonly Point[], options: RegularityOptions = {}): Regularity {
  const order = leftToRight(pins);
  const found = findAmong(
    order.map((pin) => pins[pin]!),
    options.rounds ?? [],
    options.progress ?? silent,
  );
  return inGivenOrder(found, order);
}

function findAmong(pins: readonly Point[], rounds: readonly KnownRound[], progress: Progress): Regularity {
  progress('true', 0);
  const field = fieldOf(pins);
  const single = (pin: number): boolean => !field.doubled.has(pin);
  const polars = findPolars(field, single, rounds);
  const inPolar = new Set(polars.flatMap(({ nodeOf }) => [...nodeOf.keys()]));
  progress('true', 0.2);
  const grown = findLattices(field, (pin) => single(pin) && !inPolar.has(pin));
  const sure = releaseCrossing(field, grown);
  progress('true', 0.5);
  const taken = new Set([...inPolar, ...sure.flatMap(({ nodeOf }) => [...nodeOf.keys()])]);
  const free = (pin: number): boolean => single(pin) && !taken.has(pin);
  const known = jitterOf([...polars, ...sure]);
  const first = fitRuns(field, findChains(field, free), known, new Map());
  progress('true', 0.6);
  const exact = stepsRecur(field);
  const along = jitterAlong(
    field,
    first.runs.map(({ chain }) => chain),
  );
  const steadiest = known ?? Math.min(first.quietest ?? Infinity, along ?? Infinity);
  // Copies in a drafted pattern are exact; what only nearly comes again there does so by chance.
  const sigma =
    steadiest < DRAFTED * field.spacing
      ? DRAFTED * field.spacing
      : Math.max(exact ? 0 : (first.sigma ?? 0), 0.01 * field.spacing);
  const features = featuresOf(field, free, first.runs);
  const groups = first.runs.map(({ chain }) => chain.pins);
  const copies: Copies[] = [];
  if (polars.length > 0) {
    for (const polar of polars) {
      const turn = findTurn(field, features, polar, sigma, groups);
      if (turn !== null) copies.push(turn);
    }
  } else {
    const repeat = findRepeat(field, features, sigma, groups);
    if (repeat !== null) copies.push(repeat);
  }
  const mirror = findMirror(field, features, sigma);
  progress('true', 0.8);
  const folded = new Map(copies.flatMap((one) => [...foldedPlaces(field, one)]));
  const steadied = folded.size === 0 ? field : movedField(field, (pin) => folded.get(pin)?.place);
  const { runs } = fitRuns(
    steadied,
    findChains(steadied, free),
    first.sigma,
    new Map([...folded].map(([pin, { copies: count }]) => [pin, count])),
  );
  progress('true', 0.9);
  const inRun = new Set(runs.flatMap(({ chain }) => chain.pins));
  const lattices = reclaim(field, grown, sure, (pin) => inRun.has(pin) || folded.has(pin));
  const least = Math.min(steadiest, mirror?.sigma ?? Infinity);
  const drafted = exact || (least === Infinity ? 0 : least) < DRAFTED * field.spacing;
  const regularity = assemble({ field, polars, lattices, runs, copies, folded, mirror, drafted });
  progress('true', 1);
  return regularity;
}

/** Jitter below this part of the spacing is no hand's: the pattern was drafted, and stays as it is. */
const DRAFTED = 0.002;

/** The jitter that most lattice pins agree on; null where there is no lattice. */
function jitterOf(
  lattices: readonly { sigma: number; nodeOf: ReadonlyMap<number, unknown> }[],
): number | null {
  const each = lattices.flatMap(({ sigma, nodeOf }) => new Array<number>(nodeOf.size).fill(sigma));
  return each.length === 0 ? null : quantile(each, 0.5);
}

/** The pins by which a repeat is known: neither in a lattice nor in a straight run, which come again at every step. */
function featuresOf(field: Field, free: (pin: number) => boolean, runs: readonly TrueRun[]): Set<number> {
  const straight = new Set(runs.flatMap(({ chain, fit }) => (fit.isStraight ? chain.pins : [])));
  return new Set(field.pins.flatMap((_, pin) => (free(pin) && !straight.has(pin) ? [pin] : [])));
}
