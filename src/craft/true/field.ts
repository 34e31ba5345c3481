import KDBush from 'kdbush';
import { median } from '#base/fit/robust.ts';
import type { Point } from '#base/geometry/point.ts';

/** The pins of a pattern, indexed by place. `near` holds each pin's nearest neighbours, nearest first. */
export interface Field {
  readonly pins: readonly Point[];
  readonly index: KDBush;
  /** The pin behind each entry of the index. */
  readonly indexed: readonly number[];
  readonly near: readonly Int32Array[];
  /** The median distance of a pin from its nearest neighbour; 0 where there are fewer than two places. */
  readonly spacing: number;
  /** Pins that stand exactly on an earlier pin: they take no part in any structure. */
  readonly doubled: ReadonlySet<number>;
}

/** How many neighbours `near` holds at most. */
export const NEIGHBOURS = 12;

/** Indexes the pins in about n log n steps. Throws where a coordinate is not finite. */
export function fieldOf(pins: readonly Point[]): Field {
  const doubled = doubledPins(pins);
  const index = new KDBush(pins.length - doubled.size);
  const kept: number[] = [];
  pins.forEach(({ x, y }, pin) => {
    if (!Number.isFinite(x) || !Number.isFinite(y)) {
      throw new RangeError(`fieldOf: pin ${pin} stands at (${x}, ${y})`);
    }
    if (doubled.has(pin)) return;
    index.add(x, y);
    kept.push(pin);
  });
  index.finish();
  const near: Int32Array[] = pins.map(() => new Int32Array(0));
  // In the order of the index's leaves the last pin's reach is a good guess at the next one's.
  let reach = firstReach(pins);
  for (const id of index.ids) {
    const found = nearestTo(pins, index, kept, kept[id]!, NEIGHBOURS, reach);
    near[kept[id]!] = found.pins;
    reach = found.reach;
  }
  const firsts = kept.flatMap((pin) =>
    near[pin]!.length > 0 ? [distanceOf(pins[pin]!, pins[near[pin]![0]!]!)] : [],
  );
  return { pins, index, indexed: kept, near, doubled, spacing: firsts.length > 0 ? median(firsts) : 0 };
}

/** The same pins with some of them moved a little; pins doubled before stay out. */
export function movedField(field: Field, placeOf: (pin: number) => Point | undefined): Field {
  const moved = fieldOf(field.pins.map((pin, k) => placeOf(k) ?? pin));
  return { ...moved, doubled: new Set([...field.doubled, ...moved.doubled]) };
}

/** All pins within `reach` of a place, in no order. */
export const pinsWithin = (field: Field, { x, y }: Point, reach: number): number[] =>
  field.index.within(x, y, reach).map((entry) => field.indexed[entry]!);

/** The `count` pins nearest to a place that pass `wanted`, nearest first. */
export function nearestPins(
  field: Field,
  place: Point,
  count: number,
  reach: number,
  wanted: (pin: number) => boolean,
): number[] {
  let found: number[] = [];
  for (let radius = reach, round = 0; round < 8; round++, radius *= 1.6) {
    found = pinsWithin(field, place, radius).filter(wanted);
    if (found.length >= count) break;
  }
  const far = (pin: number): number => distanceOf(place, field.pins[pin]!);
  return found.sort((p, q) => far(p) - far(q) || p - q).slice(0, count);
}

const distanceOf = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

function doubledPins(pins: readonly Point[]): Set<number> {
  const seen = new Map<number, Set<number>>();
  const doubled = new Set<number>();
  pins.forEach(({ x, y }, pin) => {
    const column = seen.get(x);
    if (column === undefined) seen.set(x, new Set([y]));
    else if (column.has(y)) doubled.add(pin);
    else column.add(y);
  });
  return doubled;
}

function firstReach(pins: readonly Point[]): number {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of pins) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return (3 * Math.max(right - left, bottom - top)) / Math.sqrt(pins.length + 1) || 1;
}

function nearestTo(
  pins: readonly Point[],
  index: KDBush,
  kept: readonly number[],
  pin: number,
  count: number,
  firstRadius: number,
): { pins: Int32Array; reach: number } {
  const { x, y } = pins[pin]!;
  const wanted = Math.min(count + 1, kept.length);
  let radius = firstRadius;
  let ids = index.within(x, y, radius);
  for (let round = 0; ids.length < wanted && round < 200; round++) {
    radius *= 1.5;
    ids = index.within(x, y, radius);
  }
  for (let round = 0; ids.length > 6 * wanted && round < 200; round++) {
    const closer = index.within(x, y, radius / 1.5);
    if (closer.length < wanted) break;
    radius /= 1.5;
    ids = closer;
  }
  const ranked = ids
    .map((id) => ({ pin: kept[id]!, far: distanceOf(pins[kept[id]!]!, { x, y }) }))
    .filter((other) => other.pin !== pin)
    .sort((p, q) => p.far - q.far || p.pin - q.pin)
    .slice(0, count);
  return { pins: Int32Array.from(ranked, (other) => other.pin), reach: radius };
}
