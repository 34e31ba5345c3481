import { distance, type Point } from '#base/geometry/point.ts';
import type { MissingPin } from '#pattern/structure.ts';
import { type Field, pinsWithin } from './field.ts';
import { meantHoles } from './meant-holes.ts';
import { FILLED, isAmongPins, LEAST_CONFIDENCE, MOST_LACKING, weigh } from './missing.ts';
import type { Net, Node } from './net.ts';
import type { Ask, Witness } from './witness.ts';

/**
 * Empty nodes that ought to hold a pin: a hole of one or two nodes in the midst of others, one beside an opening or
 * at the rim whose own neighbours stand on opposite sides, a gap in a straight last row, or a place that the other
 * copies of the pattern fill with ground. What is empty in the other copies too was meant so.
 */
export function missingInNet(field: Field, net: Net, ask: Ask): MissingPin[] {
  const empty = unmeantNodes(field, net, emptyNodes(net));
  const hungTogether = groupsOf(net, empty);
  const askGround = copiesAgree(net, ask) ? ask : nobody;
  const open = new Map<number, OpenNode>();
  for (const [key, node] of empty) {
    const place = net.placeOf(node);
    const spacing = net.spacingAt(node);
    const witness = askGround(place, 0.4 * spacing, net.isMember);
    if (isFilled(field, net, place, spacing, witness)) continue;
    open.set(key, { node, place, witness, ...surroundings(field, net, node) });
  }
  // An opening that only one copy has was still meant: nobody forgets so many pins side by side.
  const lacking = groupsOf(
    net,
    nodesOf(open, ({ witness }) => witness.yes > witness.no),
  );
  const enclosed = groupsOf(net, nodesOf(open, isEnclosed));
  const isFew = (group: readonly number[] | undefined): boolean =>
    group !== undefined && group.length <= MOST_LACKING;
  return [...open].flatMap(([key, one]) => {
    const { node, place, witness, pairs } = one;
    if (lacking.has(key) && !isFew(lacking.get(key))) return [];
    const belief =
      isEnclosed(one) && isFew(hungTogether.get(key))
        ? pairs === 4
          ? IN_MIDST
          : NEARLY_IN_MIDST
        : isGapInLastRow(net, node)
          ? IN_LAST_ROW
          : isFew(enclosed.get(key))
            ? BESIDE_OPENING
            : lacking.has(key) && isAmongPins(field, place)
              ? BY_COPIES
              : 0;
    const confidence = weigh(belief, witness);
    if (confidence < LEAST_CONFIDENCE) return [];
    return [{ ...place, confidence, structure: net.id, why: net.why }];
  });
}

/** First beliefs that an empty node lacks its pin, before other copies are asked. */
const IN_MIDST = 0.95;
const NEARLY_IN_MIDST = 0.85;
const IN_LAST_ROW = 0.75;
/** Not enough alone: beside motifs a pin is often left out on purpose. */
const BESIDE_OPENING = 0.45;
const BY_COPIES = 0.35;

interface OpenNode {
  readonly node: Node;
  readonly place: Point;
  readonly witness: Witness;
  /** Opposite neighbours that both stand, and all that stand, of eight. */
  readonly pairs: number;
  readonly around: number;
}

const nodesOf = (
  open: ReadonlyMap<number, OpenNode>,
  wanted: (one: OpenNode) => boolean,
): Map<number, Node> =>
  new Map([...open].flatMap(([key, one]) => (wanted(one) ? [[key, one.node] as const] : [])));

/** The empty nodes without the holes of a ground that is made with holes. */
function unmeantNodes(field: Field, net: Net, empty: ReadonlyMap<number, Node>): Map<number, Node> {
  const holes = new Map(
    [...empty].filter(([, node]) => {
      const place = net.placeOf(node);
      return (
        !isFilled(field, net, place, net.spacingAt(node), NOBODY) &&
        isEnclosed(surroundings(field, net, node))
      );
    }),
  );
  const meant = meantHoles(net, holes, empty);
  return new Map([...empty].filter(([key]) => !meant.has(key)));
}

const MOST_AROUND = 6;

/** With neighbours on opposite sides in three directions, or in two and hardly one lacking, a node is enclosed. */
const isEnclosed = ({ pairs, around }: Pick<OpenNode, 'pairs' | 'around'>): boolean =>
  pairs >= 3 || (pairs === 2 && around >= MOST_AROUND);

/** A pin of no node may have strayed so far from this one, in parts of the spacing. */
const STRAYED = 0.85;
/** Where the copies have a pin, one off its node by more standard deviations than this is another. */
const STRAYED_SIGMAS = 6;

function isFilled(field: Field, net: Net, place: Point, spacing: number, { yes, no }: Witness): boolean {
  const strayed = yes > no ? Math.max(FILLED * spacing, STRAYED_SIGMAS * net.sigma) : Infinity;
  return pinsWithin(field, place, Math.min(STRAYED * spacing, strayed)).some(
    (pin) => !net.isMember(pin) || distance(place, field.pins[pin]!) < FILLED * spacing,
  );
}

const NOBODY: Witness = { yes: 0, no: 0 };
const nobody: Ask = () => NOBODY;

/** Where fewer of the ground's own pins than this have their copies, the copies are no witnesses for ground. */
const LEAST_AGREED = 0.85;
/** So many of them tell. */
const MOST_ASKED = 500;

function copiesAgree(net: Net, ask: Ask): boolean {
  let [yes, no] = [0, 0];
  const members = [...net.members];
  const every = Math.max(1, members.length / MOST_ASKED);
  for (let k = 0; k < members.length; k += every) {
    const node = members[Math.floor(k)]!;
    const witness = ask(net.placeOf(node), 0.4 * net.spacingAt(node), net.isMember);
    yes += witness.yes;
    no += witness.no;
  }
  return yes > LEAST_AGREED * (yes + no);
}

/** A pin off the net counts as a neighbour this near to its node, in parts of the spacing: a footside stands aside. */
const ASIDE = 0.3;

function surroundings(field: Field, net: Net, node: Node): { pairs: number; around: number } {
  const stands = (there: Node): boolean =>
    net.exists(there) &&
    (net.isPinned(there) || pinsWithin(field, net.placeOf(there), ASIDE * net.spacingAt(there)).length > 0);
  let [pairs, around] = [0, 0];
  for (const step of net.steps(node)) {
    const one = stands(away(node, step, 1));
    const other = stands(away(node, step, -1));
    around += Number(one) + Number(other);
    if (one && other) pairs++;
  }
  return { pairs, around };
}

const away = (node: Node, [di, dj]: Node, times: number): Node => [
  node[0] + times * di,
  node[1] + times * dj,
];

const isPinned = (net: Net, node: Node, step: Node, times: number): boolean => {
  const there = away(node, step, times);
  return net.exists(there) && net.isPinned(there);
};

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
