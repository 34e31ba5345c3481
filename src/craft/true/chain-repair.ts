import { between, distance, type Point } from '#base/geometry/point.ts';
import { type Chain, tripleCost } from './chain.ts';
import { type Field, pinsWithin } from './field.ts';

/**
 * Joins chains whose ends face each other, directly or over one lacking pin, and closes those that face their own
 * beginning. A single strayed pin breaks the linking of pins; the course of several on either side still shows.
 */
export function bridgeGaps(field: Field, chains: readonly Chain[]): Chain[] {
  const ends = new Map<number, number>();
  const parts: (Chain | null)[] = [...chains];
  chains.forEach((chain, c) => {
    if (chain.closed || chain.pins.length < 3) return;
    ends.set(chain.pins[0]!, c);
    ends.set(chain.pins.at(-1)!, c);
  });
  for (const { from, to, step } of gaps(field, chains, ends)) {
    const c = ends.get(from);
    const d = ends.get(to);
    if (c === undefined || d === undefined) continue;
    ends.delete(from);
    ends.delete(to);
    if (c === d) {
      const own = parts[c]!;
      parts[c] = { ...own, steps: [...own.steps, step], closed: true };
      continue;
    }
    const first = turned(parts[c]!, (chain) => chain.pins.at(-1) === from);
    const second = turned(parts[d]!, (chain) => chain.pins[0] === to);
    parts[c] = {
      pins: [...first.pins, ...second.pins],
      steps: [...first.steps, step, ...second.steps],
      closed: false,
    };
    parts[d] = null;
    const tail = second.pins.at(-1)!;
    if (ends.has(tail)) ends.set(tail, c);
  }
  return parts.filter((chain) => chain !== null);
}

const turned = (chain: Chain, isRight: (chain: Chain) => boolean): Chain =>
  isRight(chain) ? chain : { ...chain, pins: chain.pins.toReversed(), steps: chain.steps.toReversed() };

interface Gap {
  readonly from: number;
  readonly to: number;
  readonly step: 1 | 2;
  readonly cost: number;
}

/** Pairs of chain ends that a link, or one pin between them, would join smoothly and evenly, best first. */
function gaps(field: Field, chains: readonly Chain[], ends: ReadonlyMap<number, number>): Gap[] {
  const found: Gap[] = [];
  for (const [from, c] of ends) {
    const { before, spacing } = tail(field, chains[c]!, from);
    const here = field.pins[from]!;
    for (const to of pinsWithin(field, here, 2.6 * spacing)) {
      const d = ends.get(to);
      if (to <= from || d === undefined) continue;
      if (c === d && chains[c]!.pins.length < 6) continue;
      const { before: after, spacing: other } = tail(field, chains[d]!, to);
      const there = field.pins[to]!;
      const gap = distance(here, there);
      const mean = (spacing + other) / 2;
      const step = gap < 1.45 * mean ? 1 : 2;
      const ratio = Math.abs(Math.log(gap / (step * mean)));
      if (ratio > MOST_RATIO) continue;
      const cost = endCost(before, here, there, mean) + endCost(after, there, here, mean);
      if (cost < Infinity) found.push({ from, to, step, cost: cost + (ratio / MOST_RATIO) ** 2 });
    }
  }
  return found.sort((a, b) => a.cost - b.cost || a.from - b.from || a.to - b.to);
}

const MOST_RATIO = 0.35;

/** The pin two before a chain's end, and the chain's mean spacing near it. */
function tail(field: Field, { pins }: Chain, end: number): { before: Point; spacing: number } {
  const order = pins[0] === end ? pins : pins.toReversed();
  const last = order.slice(0, 5).map((pin) => field.pins[pin]!);
  let length = 0;
  for (let k = 1; k < last.length; k++) length += distance(last[k]!, last[k - 1]!);
  return { before: last[2]!, spacing: length / (last.length - 1) };
}

/** How ill the way on to `there` continues a chain's last two links; these jitter less than the last one alone. */
function endCost(before: Point, here: Point, there: Point, spacing: number): number {
  const size = distance(here, there);
  if (size === 0) return Infinity;
  const way = between(here, there, (2 * spacing) / size);
  return tripleCost(before, here, way);
}

/** How much longer the way over a pin between may be than the link it is put into. */
const MOST_DETOUR = 1.3;

/** Puts loose pins into links that pass them over. */
export function fillLinks(
  field: Field,
  chains: readonly Chain[],
  isLoose: (pin: number) => boolean,
): Chain[] {
  const held = new Set(chains.filter(({ pins }) => pins.length > 2).flatMap(({ pins }) => pins));
  return chains.map((chain) => {
    if (chain.pins.length < 3) return chain;
    const pins: number[] = [];
    const steps: number[] = [];
    chain.pins.forEach((pin, k) => {
      pins.push(pin);
      const next = chain.pins[k + 1] ?? (chain.closed ? chain.pins[0] : undefined);
      if (next === undefined) return;
      const filling = pinBetween(field, pin, next, (other) => isLoose(other) && !held.has(other));
      if (filling === null) steps.push(chain.steps[k]!);
      else {
        held.add(filling);
        pins.push(filling);
        steps.push(1, 1);
      }
    });
    return { pins, steps, closed: chain.closed };
  });
}

function pinBetween(field: Field, from: number, to: number, wanted: (pin: number) => boolean): number | null {
  const a = field.pins[from]!;
  const b = field.pins[to]!;
  const size = distance(a, b);
  let best: number | null = null;
  let least = MOST_DETOUR * size;
  for (const pin of pinsWithin(field, between(a, b, 0.5), 0.45 * size)) {
    if (pin === from || pin === to || !wanted(pin)) continue;
    const place = field.pins[pin]!;
    const one = distance(a, place);
    const other = distance(place, b);
    if (one + other >= least || Math.min(one, other) < 0.3 * size) continue;
    least = one + other;
    best = pin;
  }
  return best;
}
