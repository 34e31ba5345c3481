import type { Point } from '#base/geometry/point.ts';
import { distance } from '#base/geometry/point.ts';
import { type Field, nearestPins } from './field.ts';
import { type GrownLattice, growLattice } from './lattice-grow.ts';
import { seedLattice } from './lattice-seed.ts';

/**
 * All lattices of a pattern, found one after another: the most regular surroundings first. Every pin is asked at
 * most a few times, so the cost grows with the number of pins.
 */
export function findLattices(field: Field, isFree: (pin: number) => boolean): GrownLattice[] {
  const found: GrownLattice[] = [];
  const taken = new Uint8Array(field.pins.length);
  const asked = new Uint8Array(field.pins.length);
  const free = (pin: number): boolean => taken[pin] === 0 && isFree(pin);
  let patience = PATIENCE + field.pins.length / 400;
  for (const seed of seedOrder(field)) {
    if (patience <= 0) break;
    if (asked[seed] !== 0 || !free(seed)) continue;
    patience--;
    for (const size of WINDOWS) {
      const pins = nearestPins(field, field.pins[seed]!, size, Math.sqrt(size) * field.spacing, free);
      pins.slice(0, size / 6).forEach((pin) => {
        asked[pin] = 1;
      });
      const grown = fromWindow(field, pins, free);
      if (grown === null) continue;
      found.push(grown);
      for (const pin of grown.nodeOf.keys()) taken[pin] = 1;
      break;
    }
  }
  return found;
}

/** How many windows may disappoint before the search ends; it begins where it is likeliest to succeed. */
const PATIENCE = 24;
/** Pins in a window: a wide one sees through jitter, a narrow one finds the small fillings. */
const WINDOWS = [140, 48];
/** Where steps to the neighbours are less balanced than this, no lattice is sought. */
const LEAST_BALANCE = 0.35;

function fromWindow(
  field: Field,
  pins: readonly number[],
  free: (pin: number) => boolean,
): GrownLattice | null {
  const places = pins.map((pin) => field.pins[pin]!);
  const seed = seedLattice(places, typicalStep(field, pins));
  return seed === null ? null : growLattice(field, seed.frame, pins, free);
}

function typicalStep(field: Field, pins: readonly number[]): number {
  const steps = pins
    .filter((pin) => field.near[pin]!.length > 1)
    .map((pin) => distance(field.pins[pin]!, field.pins[field.near[pin]![1]!]!))
    .sort((a, b) => a - b);
  return steps[steps.length >> 1] ?? 0;
}

/** Pins by how well their neighbours balance each other, best first; those in no regular surroundings left out. */
function seedOrder(field: Field): number[] {
  const balance = field.pins.map((_, pin) => balanceOf(field, pin));
  return balance
    .map((_, pin) => pin)
    .filter((pin) => balance[pin]! >= LEAST_BALANCE)
    .sort((p, q) => balance[q]! - balance[p]! || p - q);
}

/** The share of a pin's six nearest neighbours that have another one opposite. */
function balanceOf(field: Field, pin: number): number {
  const around = [...field.near[pin]!.slice(0, 8)].map((other) => step(field, pin, other));
  const first = around.slice(0, 6);
  if (first.length < 6) return 0;
  let paired = 0;
  for (const { x, y } of first) {
    const size = Math.hypot(x, y);
    if (around.some((other) => Math.hypot(other.x + x, other.y + y) < 0.4 * size)) paired++;
  }
  return paired / first.length;
}

const step = (field: Field, from: number, to: number): Point => ({
  x: field.pins[to]!.x - field.pins[from]!.x,
  y: field.pins[to]!.y - field.pins[from]!.y,
});
