import { distance, type Point } from '#base/geometry/point.ts';
import type { MissingPin } from '#pattern/structure.ts';
import { movedBy } from './copies.ts';
import { type Field, pinsWithin } from './field.ts';
import type { Net, Node } from './net.ts';
import type { Copies } from './repeats.ts';
import type { TrueRun } from './runs.ts';
import type { Witness } from './witness.ts';

export type Ask = (place: Point, reach: number) => Witness;

/** A pin this part of a spacing from an empty place fills it, whatever it belongs to. */
const FILLED = 0.5;

/**
 * Empty nodes that ought to hold a pin: a hole of one or two nodes in the midst of others, a gap in a straight last
 * row, or a place that most other copies of the pattern fill. What is empty in the other copies too was meant so.
 */
export function missingInNet(field: Field, net: Net, ask: Ask): MissingPin[] {
  const empty = emptyNodes(net);
  const groupOf = groupsOf(net, empty);
  const open = [...empty].filter(([, node]) => !isFilled(field, net, net.placeOf(node), net.spacingAt(node)));
  const told = new Map(
    open.map(([key, node]) => [key, ask(net.placeOf(node), 0.4 * net.spacingAt(node))] as const),
  );
  const filledElsewhere = new Map(open.filter(([key]) => told.get(key)!.yes > told.get(key)!.no));
  const lackingOf = groupsOf(net, filledElsewhere);
  return open.flatMap(([key, node]) => {
    const place = net.placeOf(node);
    const group = groupOf.get(key)!;
    const witness = told.get(key)!;
    // An opening that only one copy has was still meant: nobody forgets so many pins side by side.
    if ((lackingOf.get(key)?.length ?? 0) > MOST_LACKING) return [];
    const pairs = net
      .steps(node)
      .filter((step) => isPinned(net, node, step, 1) && isPinned(net, node, step, -1));
    const around = neighboursOf(net, node);
    if (pairs.length === 0 || around < LEAST_AROUND) return [];
    const inMidst =
      (around >= ALL_BUT_ONE && witness.yes > witness.no) ||
      (group.length <= MOST_LACKING && (pairs.length >= 3 || (pairs.length === 2 && around >= MOST_AROUND)));
    const inRow = !inMidst && isGapInLastRow(net, node);
    const confidence = weigh(inMidst ? (pairs.length === 4 ? 0.95 : 0.85) : inRow ? 0.75 : 0.1, witness);
    if (confidence < LEAST_CONFIDENCE) return [];
    return [{ ...place, confidence, structure: net.id, why: net.why }];
  });
}

/** A pin of no node may have strayed so far from this one, in parts of the spacing. */
const STRAYED = 0.85;

const isFilled = (field: Field, net: Net, place: Point, spacing: number): boolean =>
  pinsWithin(field, place, STRAYED * spacing).some(
    (pin) => !net.isMember(pin) || distance(place, field.pins[pin]!) < FILLED * spacing,
  );

const LEAST_AROUND = 4;
const MOST_AROUND = 6;
/** With all but one of its eight neighbours, a node that other copies fill is in the midst even beside an opening. */
const ALL_BUT_ONE = 7;
const LEAST_CONFIDENCE = 0.5;

/** In a crowded pattern some pin stands near any place: how often one does by chance, and where a copy is meant. */
const BY_CHANCE = 0.38;
const WHERE_MEANT = 0.96;

/** A first belief, weighed with what the copies say (Bayes): a pin found there speaks for it a little, none against it much. */
function weigh(belief: number, { yes, no }: Witness): number {
  const forIt = (WHERE_MEANT / BY_CHANCE) ** yes;
  const against = ((1 - WHERE_MEANT) / (1 - BY_CHANCE)) ** no;
  const odds = (belief / (1 - belief)) * forIt * against;
  return Math.min(0.99, odds / (1 + odds));
}

const away = (node: Node, [di, dj]: Node, times: number): Node => [
  node[0] + times * di,
  node[1] + times * dj,
];

const isPinned = (net: Net, node: Node, step: Node, times: number): boolean => {
  const there = away(node, step, times);
  return net.exists(there) && net.isPinned(there);
};

function neighboursOf(net: Net, node: Node): number {
  let count = 0;
  for (const step of net.steps(node)) {
    if (isPinned(net, node, step, 1)) count++;
    if (isPinned(net, node, step, -1)) count++;
  }
  return count;
}

function emptyNodes(net: Net): Map<number, Node> {
  const empty = new Map<number, Node>();
  for (const node of net.members) {
    for (const step of net.steps(node)) {
      for (const times of [-1, 1]) {
        const other = away(node, step, times);
        if (net.exists(other) && !net.isPinned(other)) empty.set(net.keyOf(other), other);
      }
    }
  }
  return empty;
}

/** More lacking nodes side by side than this were left out on purpose. */
const MOST_LACKING = 2;

/** For each empty node, those that hang together with it, itself included. */
function groupsOf(net: Net, empty: ReadonlyMap<number, Node>): Map<number, readonly number[]> {
  const groupOf = new Map<number, readonly number[]>();
  for (const start of empty.keys()) {
    if (groupOf.has(start)) continue;
    const group: number[] = [start];
    groupOf.set(start, group);
    for (const key of group) {
      const node = empty.get(key)!;
      for (const step of net.steps(node)) {
        for (const times of [-1, 1]) {
          const next = away(node, step, times);
          const nextKey = net.exists(next) ? net.keyOf(next) : -1;
          if (!empty.has(nextKey) || groupOf.has(nextKey)) continue;
          groupOf.set(nextKey, group);
          group.push(nextKey);
        }
      }
    }
  }
  return groupOf;
}

/** How far a last row must go on to both sides of its gap. */
const ROW = 3;

/** Whether a node is the one gap in a straight row beyond which, all along, there is nothing on one side. */
function isGapInLastRow(net: Net, node: Node): boolean {
  const steps = net.steps(node);
  return steps.some((along) => {
    for (let times = 1; times <= ROW; times++) {
      if (!isPinned(net, node, along, times) || !isPinned(net, node, along, -times)) return false;
    }
    const aside = steps.find((step) => step !== along)!;
    return [1, -1].some((side) => {
      for (let times = -ROW; times <= ROW; times++) {
        const beyond = away(away(node, along, times), aside, side);
        const within = away(away(node, along, times), aside, -side);
        if (net.exists(beyond) && net.isPinned(beyond)) return false;
        if (!net.exists(within) || !net.isPinned(within)) return false;
      }
      return true;
    });
  });
}

/** The gaps in even runs that no other pin fills. */
export function missingInRun(field: Field, { chain, fit }: TrueRun, id: string, ask: Ask): MissingPin[] {
  return fit.gaps.flatMap(({ after, place }) => {
    const before = fit.places[after]!;
    const next = fit.places[(after + 1) % fit.places.length]!;
    const spacing = (distance(before, place) + distance(place, next)) / 2;
    const sides = chain.closed ? 3 : Math.min(after + 1, chain.pins.length - after - 1);
    const witness = ask(place, 0.4 * spacing);
    const first = sides < 2 ? 0.4 : sides < 3 ? 0.6 : fit.isStraight ? 0.92 : 0.78;
    const confidence = weigh(first, witness);
    if (confidence < LEAST_CONFIDENCE || pinsWithin(field, place, 0.62 * spacing).length > 0) return [];
    return [{ ...place, confidence, structure: id, why: 'run' as const }];
  });
}

/** Pins that the other copies of a track have and this copy lacks. */
export function missingInCopies(
  field: Field,
  { motion, tracks }: Copies,
  folded: Folded,
  id: string,
  ask: Ask,
): MissingPin[] {
  const copies =
    motion.kind === 'turn' ? motion.order : 1 + Math.max(...tracks.map((track) => Math.max(...track.keys())));
  return tracks.flatMap((track) => {
    if (track.size < LEAST_COPIES) return [];
    const [known, pin] = track.entries().next().value!;
    const at = folded.get(pin)!.place;
    return Array.from({ length: copies }, (_, copy) => copy).flatMap((copy): MissingPin[] => {
      if (track.has(copy)) return [];
      const place = movedBy(motion, copy - known, at);
      if (pinsWithin(field, place, FILLED * field.spacing).length > 0) return [];
      if (!isAmongPins(field, place)) return [];
      const confidence = weigh(0.3, ask(place, 0.4 * field.spacing));
      if (confidence < LEAST_CONFIDENCE) return [];
      const why = motion.kind === 'turn' ? ('symmetry' as const) : ('repeat' as const);
      return [{ ...place, confidence, structure: id, why }];
    });
  });
}

type Folded = ReadonlyMap<number, { readonly place: Point }>;

const LEAST_COPIES = 2;

/** Whether pins stand on all sides of a place or along a line through it, so that the pattern does not just end there. */
function isAmongPins(field: Field, place: Point): boolean {
  const around = pinsWithin(field, place, 2.2 * field.spacing).map((pin) => field.pins[pin]!);
  return around.some((one) =>
    around.some((other) => {
      const dot = (one.x - place.x) * (other.x - place.x) + (one.y - place.y) * (other.y - place.y);
      return dot < -0.3 * distance(one, place) * distance(other, place);
    }),
  );
}

/** One proposal a place: the surest of those that mean the same pin. */
export function withoutTwins(missing: readonly MissingPin[], spacing: number): MissingPin[] {
  const kept: MissingPin[] = [];
  for (const one of missing.toSorted((p, q) => q.confidence - p.confidence)) {
    if (kept.every((other) => distance(one, other) > 0.6 * spacing)) kept.push(one);
  }
  return kept;
}
