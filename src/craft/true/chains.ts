import { type Point, subtract } from '#base/geometry/point.ts';
import type { Field } from './field.ts';

/** Pins in order along one line or curve. `steps[k]` is how many spacings lie between pin k and the next: 1, or 2 over a gap. */
export interface Chain {
  readonly pins: readonly number[];
  readonly steps: readonly number[];
  readonly closed: boolean;
}

/**
 * Links pins into chains: each pin to the two neighbours that continue each other most smoothly and evenly.
 * `mayLink` says which pins take part.
 */
export function findChains(field: Field, mayLink: (pin: number) => boolean): Chain[] {
  const links: Links = field.pins.map(() => []);
  for (const { pin, one, other } of smoothTriples(field, mayLink)) {
    if (canLink(field, links, pin, one, other) && canLink(field, links, pin, other, one)) {
      link(links, pin, one);
      link(links, pin, other);
    }
  }
  const chains = walk(links).map((pins) => openOrClosed(links, pins));
  return bridge(field, chains).filter((chain) => chain.pins.length >= LEAST_CHAIN);
}

type Links = number[][];

/** Fewer pins in a row are no evidence of a line. */
export const LEAST_CHAIN = 5;
/** Turns and changes of spacing beyond these are corners, not jitter. Radians; natural logarithm of the ratio. */
const MOST_TURN = 0.95;
const MOST_RATIO = 0.55;

interface Triple {
  readonly pin: number;
  readonly one: number;
  readonly other: number;
  readonly cost: number;
}

/** How ill a pin between two others continues from one to the other; infinite where it is a corner. */
function tripleCost(from: Point, pin: Point, to: Point): number {
  const u = subtract(pin, from);
  const v = subtract(to, pin);
  const lu = Math.hypot(u.x, u.y);
  const lv = Math.hypot(v.x, v.y);
  if (lu === 0 || lv === 0) return Infinity;
  const turn = Math.abs(Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y));
  const ratio = Math.abs(Math.log(lv / lu));
  if (turn > MOST_TURN || ratio > MOST_RATIO) return Infinity;
  return (turn / 0.5) ** 2 + (ratio / 0.3) ** 2;
}

function smoothTriples(field: Field, mayLink: (pin: number) => boolean): Triple[] {
  const { pins, near } = field;
  const triples: Triple[] = [];
  for (let pin = 0; pin < pins.length; pin++) {
    if (!mayLink(pin)) continue;
    const around = [...near[pin]!].filter(mayLink).slice(0, 9);
    const nearest = around.length === 0 ? 0 : distanceOf(pins[pin]!, pins[around[0]!]!);
    for (let k = 0; k < around.length; k++) {
      for (let l = k + 1; l < around.length; l++) {
        const cost = tripleCost(pins[around[k]!]!, pins[pin]!, pins[around[l]!]!);
        if (cost === Infinity) continue;
        const reach = distanceOf(pins[pin]!, pins[around[l]!]!) / nearest;
        triples.push({ pin, one: around[k]!, other: around[l]!, cost: cost + 1.2 * Math.log(reach) ** 2 });
      }
    }
  }
  return triples.sort((a, b) => a.cost - b.cost || a.pin - b.pin || a.one - b.one || a.other - b.other);
}

/** Whether `pin` may be linked to `next`, being linked to `before` too. */
function canLink(field: Field, links: Links, pin: number, next: number, before: number): boolean {
  if (links[pin]!.includes(next)) return true;
  if (links[pin]!.length > (links[pin]!.includes(before) ? 1 : 0)) return false;
  const there = links[next]!;
  if (there.length > 1) return false;
  if (there.length === 0) return true;
  return tripleCost(field.pins[pin]!, field.pins[next]!, field.pins[there[0]!]!) < Infinity;
}

function link(links: Links, p: number, q: number): void {
  if (links[p]!.includes(q)) return;
  links[p]!.push(q);
  links[q]!.push(p);
}

function walk(links: Links): number[][] {
  const seen = new Uint8Array(links.length);
  const chains: number[][] = [];
  const follow = (start: number): void => {
    const chain: number[] = [];
    for (let pin: number | undefined = start; pin !== undefined; ) {
      seen[pin] = 1;
      chain.push(pin);
      pin = links[pin]!.find((other) => seen[other] === 0);
    }
    chains.push(chain);
  };
  links.forEach((others, pin) => {
    if (others.length === 1 && seen[pin] === 0) follow(pin);
  });
  links.forEach((others, pin) => {
    if (others.length === 2 && seen[pin] === 0) follow(pin);
  });
  return chains;
}

function openOrClosed(links: Links, pins: readonly number[]): Chain {
  const closed = pins.length > 4 && links[pins[0]!]!.includes(pins.at(-1)!);
  const steps = new Array<number>(closed ? pins.length : pins.length - 1).fill(1);
  return { pins, steps, closed };
}

/** Joins chains whose ends face each other over one lacking pin, and closes those that face their own beginning. */
function bridge(field: Field, chains: readonly Chain[]): Chain[] {
  const ends = new Map<number, number>();
  const parts: (Chain | null)[] = [...chains];
  chains.forEach((chain, c) => {
    if (chain.closed || chain.pins.length < 3) return;
    ends.set(chain.pins[0]!, c);
    ends.set(chain.pins.at(-1)!, c);
  });
  for (const { from, to } of gaps(field, chains, ends)) {
    const c = ends.get(from);
    const d = ends.get(to);
    if (c === undefined || d === undefined) continue;
    ends.delete(from);
    ends.delete(to);
    if (c === d) {
      const own = parts[c]!;
      parts[c] = { ...own, steps: [...own.steps, 2], closed: true };
      continue;
    }
    const first = turned(parts[c]!, (chain) => chain.pins.at(-1) === from);
    const second = turned(parts[d]!, (chain) => chain.pins[0] === to);
    parts[c] = {
      pins: [...first.pins, ...second.pins],
      steps: [...first.steps, 2, ...second.steps],
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

/** Pairs of chain ends that one pin between them would join smoothly and evenly, best first. */
function gaps(
  field: Field,
  chains: readonly Chain[],
  ends: ReadonlyMap<number, number>,
): { from: number; to: number }[] {
  const found: { from: number; to: number; cost: number }[] = [];
  for (const [from, c] of ends) {
    const [before, spacing] = tail(field, chains[c]!, from);
    const here = field.pins[from]!;
    for (const entry of field.index.within(here.x, here.y, 2.6 * spacing)) {
      const to = field.indexed[entry]!;
      const d = ends.get(to);
      if (to <= from || d === undefined) continue;
      if (c === d && chains[c]!.pins.length < 6) continue;
      const [after, other] = tail(field, chains[d]!, to);
      const gap = distanceOf(here, field.pins[to]!);
      const ratio = Math.abs(Math.log(gap / (spacing + other)));
      const midpoint = { x: (here.x + field.pins[to]!.x) / 2, y: (here.y + field.pins[to]!.y) / 2 };
      const cost = tripleCost(before, here, midpoint) + tripleCost(midpoint, field.pins[to]!, after);
      if (ratio < 0.3 && cost < Infinity) found.push({ from, to, cost: cost + (ratio / 0.3) ** 2 });
    }
  }
  return found.sort((a, b) => a.cost - b.cost || a.from - b.from);
}

/** The pin before a chain's end, and the chain's mean spacing near it. */
function tail(field: Field, { pins }: Chain, end: number): [Point, number] {
  const order = pins[0] === end ? pins : pins.toReversed();
  const last = order.slice(0, 4).map((pin) => field.pins[pin]!);
  let length = 0;
  for (let k = 1; k < last.length; k++) length += distanceOf(last[k]!, last[k - 1]!);
  return [last[1]!, length / (last.length - 1)];
}

const distanceOf = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
