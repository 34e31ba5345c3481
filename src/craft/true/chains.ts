import { distance, dot, length, subtract } from '#base/geometry/point.ts';
import { type Chain, LEAST_CHAIN, tripleCost } from './chain.ts';
import { bridgeGaps, fillLinks } from './chain-repair.ts';
import type { Field } from './field.ts';
import { straightRows } from './straight-rows.ts';

/**
 * Links pins into chains: long straight even rows first, then each pin to the two neighbours that continue each
 * other most smoothly and evenly. `mayLink` says which pins take part.
 */
export function findChains(field: Field, mayLink: (pin: number) => boolean): Chain[] {
  const rows = straightRows(field, mayLink);
  const inRow = new Set(rows.flatMap(({ pins }) => pins));
  const isLoose = (pin: number): boolean => mayLink(pin) && !inRow.has(pin);
  const links: Links = field.pins.map(() => []);
  for (const { pin, one, other } of smoothTriples(field, isLoose)) {
    if (canLink(field, links, pin, one, other) && canLink(field, links, pin, other, one)) {
      link(links, pin, one);
      link(links, pin, other);
    }
  }
  const chains = walk(links).map((pins) => openOrClosed(links, pins));
  const mended = fillLinks(field, bridgeGaps(field, chains), isLoose);
  return [...rows, ...mended.filter((chain) => chain.pins.length >= LEAST_CHAIN)];
}

type Links = number[][];

interface Triple {
  readonly pin: number;
  readonly one: number;
  readonly other: number;
  readonly cost: number;
}

/** What it costs to pass over a nearer pin on the way: next to this, a smooth course along every second pin never pays. */
const PASSING_OVER = 4.5;
/** And what it costs to be linked farther off than to the nearest of all. */
const FARTHER = 2;
/** Cosine of the angle within which a nearer pin is on the way. */
const ON_THE_WAY = 0.64;

function passingOver({ pins }: Field, pin: number, to: number, around: readonly number[]): number {
  const here = pins[pin]!;
  const way = subtract(pins[to]!, here);
  const far = length(way);
  let nearest = far;
  for (const other of around) {
    const step = subtract(pins[other]!, here);
    const size = length(step);
    if (size > 0 && size < nearest && dot(step, way) > ON_THE_WAY * size * far) nearest = size;
  }
  return PASSING_OVER * Math.log(far / nearest) ** 2;
}

function smoothTriples(field: Field, mayLink: (pin: number) => boolean): Triple[] {
  const { pins, near } = field;
  const triples: Triple[] = [];
  for (let pin = 0; pin < pins.length; pin++) {
    if (!mayLink(pin)) continue;
    const around = [...near[pin]!].filter(mayLink).slice(0, 9);
    const nearest = around.length === 0 ? 0 : distance(pins[pin]!, pins[around[0]!]!);
    const passed = around.map((other) => passingOver(field, pin, other, around));
    for (let k = 0; k < around.length; k++) {
      for (let l = k + 1; l < around.length; l++) {
        const cost = tripleCost(pins[around[k]!]!, pins[pin]!, pins[around[l]!]!);
        if (cost === Infinity) continue;
        const reach = distance(pins[pin]!, pins[around[l]!]!) / nearest;
        const whole = cost + passed[k]! + passed[l]! + FARTHER * Math.log(reach) ** 2;
        triples.push({ pin, one: around[k]!, other: around[l]!, cost: whole });
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
