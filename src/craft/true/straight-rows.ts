import { distance, type Point } from '#base/geometry/point.ts';
import type { Chain } from './chain.ts';
import { type Field, pinsWithin } from './field.ts';

/**
 * Long straight rows of even steps, such as a footside, found before anything else is linked: beside a second row
 * the nearest neighbours of a pin are not its own row's.
 */
export function straightRows(field: Field, mayLink: (pin: number) => boolean): Chain[] {
  const taken = new Set<number>();
  const free = (pin: number): boolean => mayLink(pin) && !taken.has(pin);
  const rows: Chain[] = [];
  for (let pin = 0; pin < field.pins.length; pin++) {
    if (!free(pin)) continue;
    const around = [...field.near[pin]!.subarray(0, 8)].filter(free);
    for (const [one, other] of oppositePairs(field, pin, around)) {
      const row = extend(field, [one, pin, other], free);
      if (row.pins.length < LEAST_ROW || !isEven(field, row) || goesOn(field, row, free)) continue;
      rows.push(row);
      for (const member of row.pins) taken.add(member);
      break;
    }
  }
  return rows;
}

/** Fewer pins in a row may be a piece of a gentle curve. */
const LEAST_ROW = 12;
/** The step of a row is at most this many times the distance to a pin's nearest neighbour. */
const MOST_STEP = 1.9;
/** While a row is followed, a pin may stand this part of the step from where it is foretold. */
const FORETOLD = 0.36;
/** The jitter of a row, in parts of its step, beyond which it is no row. */
const MOST_JITTER = 0.16;

function oppositePairs(field: Field, pin: number, around: readonly number[]): [number, number][] {
  const pairs: [number, number][] = [];
  const here = field.pins[pin]!;
  const nearest = around.length === 0 ? 0 : distance(here, field.pins[around[0]!]!);
  for (let k = 0; k < around.length; k++) {
    for (let l = k + 1; l < around.length; l++) {
      const a = field.pins[around[k]!]!;
      const b = field.pins[around[l]!]!;
      const size = distance(a, b) / 2;
      const off = Math.hypot(a.x + b.x - 2 * here.x, a.y + b.y - 2 * here.y);
      if (off < 0.6 * size && size < MOST_STEP * nearest) pairs.push([around[k]!, around[l]!]);
    }
  }
  return pairs;
}

/** Follows a row to both sides as far as pins stand where its own straight line foretells them; one may lack. */
function extend(field: Field, start: readonly number[], free: (pin: number) => boolean): Chain {
  const slots = new Map<number, number>(start.map((pin, k) => [k, pin]));
  const inRow = new Set(start);
  let from = 0;
  let to = start.length - 1;
  for (const way of [1, -1]) {
    for (let lacking = 0; lacking < 2; ) {
      const slot = way === 1 ? to + 1 + lacking : from - 1 - lacking;
      const { place, step } = foretell(field, slots, way === 1 ? to : from, -way, slot);
      const pin = nearestFree(field, place, FORETOLD * step, (other) => free(other) && !inRow.has(other));
      if (pin === null) {
        lacking++;
        continue;
      }
      slots.set(slot, pin);
      inRow.add(pin);
      if (way === 1) to = slot;
      else from = slot;
      lacking = 0;
    }
  }
  const order = [...slots].sort(([p], [q]) => p - q);
  const steps = order.slice(1).map(([slot], k) => slot - order[k]![0]);
  return { pins: order.map(([, pin]) => pin), steps, closed: false };
}

/** How many of the last pins foretell the next. */
const MEMORY = 9;

/** The place of a slot on the straight line through the pins of the last slots before it. */
function foretell(
  field: Field,
  slots: ReadonlyMap<number, number>,
  last: number,
  back: number,
  slot: number,
): { place: Point; step: number } {
  const known: { at: number; point: Point }[] = [];
  for (let at = last; known.length < MEMORY && Math.abs(at - last) < 2 * MEMORY; at += back) {
    const pin = slots.get(at);
    if (pin !== undefined) known.push({ at, point: field.pins[pin]! });
  }
  const { origin, step } = evenLine(known);
  return {
    place: { x: origin.x + slot * step.x, y: origin.y + slot * step.y },
    step: Math.hypot(step.x, step.y),
  };
}

function evenLine(known: readonly { at: number; point: Point }[]): { origin: Point; step: Point } {
  const n = known.length;
  let [t, x, y] = [0, 0, 0];
  for (const { at, point } of known) {
    t += at / n;
    x += point.x / n;
    y += point.y / n;
  }
  let [tt, tx, ty] = [0, 0, 0];
  for (const { at, point } of known) {
    tt += (at - t) ** 2;
    tx += (at - t) * (point.x - x);
    ty += (at - t) * (point.y - y);
  }
  const step = { x: tx / tt, y: ty / tt };
  return { origin: { x: x - t * step.x, y: y - t * step.y }, step };
}

function nearestFree(
  field: Field,
  place: Point,
  reach: number,
  wanted: (pin: number) => boolean,
): number | null {
  let best: number | null = null;
  let least = reach;
  for (const pin of pinsWithin(field, place, reach)) {
    const off = distance(place, field.pins[pin]!);
    if (off > least || !wanted(pin)) continue;
    least = off;
    best = pin;
  }
  return best;
}

/** Whether the line goes on beyond an end of the row, only not straight: then it is a piece of a curve. */
function goesOn(field: Field, { pins }: Chain, free: (pin: number) => boolean): boolean {
  const inRow = new Set(pins);
  return [pins, pins.toReversed()].some((order) => {
    const end = field.pins[order[0]!]!;
    const before = field.pins[order[3]!]!;
    const step = distance(end, before) / 3;
    return pinsWithin(field, end, 1.5 * step).some((pin) => {
      if (inRow.has(pin) || !free(pin)) return false;
      const dx = field.pins[pin]!.x - end.x;
      const dy = field.pins[pin]!.y - end.y;
      const size = Math.hypot(dx, dy);
      const along = (dx * (end.x - before.x) + dy * (end.y - before.y)) / (3 * step * size);
      return size > 0.6 * step && along > AHEAD;
    });
  });
}

/** Cosine of the angle within which a pin lies ahead. */
const AHEAD = 0.77;

function isEven(field: Field, { pins, steps }: Chain): boolean {
  let at = 0;
  const known = pins.map((pin, k) => {
    if (k > 0) at += steps[k - 1]!;
    return { at, point: field.pins[pin]! };
  });
  const { origin, step } = evenLine(known);
  let squares = 0;
  for (const { at: slot, point } of known) {
    squares += (origin.x + slot * step.x - point.x) ** 2 + (origin.y + slot * step.y - point.y) ** 2;
  }
  // A row that strides over crowded pins meets some of them by chance.
  const size = Math.hypot(step.x, step.y);
  const striding = pins.filter((pin) => {
    const nearest = field.near[pin]![0];
    return nearest !== undefined && distance(field.pins[pin]!, field.pins[nearest]!) * MOST_STEP < size;
  });
  if (striding.length > 0.2 * pins.length) return false;
  const jitter = Math.sqrt(squares / (2 * pins.length - 4));
  return jitter < MOST_JITTER * size;
}
