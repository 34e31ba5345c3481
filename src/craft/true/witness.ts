import { mirrored } from '#base/fit/symmetry.ts';
import { distance, length, type Point } from '#base/geometry/point.ts';
import { type Motion, movedBy } from './copies.ts';
import { type Field, pinsWithin } from './field.ts';
import type { TrueMirror } from './mirror.ts';
import type { Copies } from './repeats.ts';

/** What the other copies of a place say: in how many a pin stands there, and in how many none does. */
export interface Witness {
  readonly yes: number;
  readonly no: number;
}

/**
 * Asks about a place. Where `counts` is given, only such pins speak for it, other pins there say nothing, and nor do
 * copies with far fewer pins round about.
 */
export type Ask = (place: Point, reach: number, counts?: (pin: number) => boolean) => Witness;

/** Asks the copies of a pattern about places in it. */
export function witnesses(field: Field, copies: readonly Copies[], mirror: TrueMirror | null): Ask {
  const motions = copies.map(({ motion }) => ({ motion, inside: inside(field, motion) }));
  return (place, reach, counts) => {
    let [yes, no] = [0, 0];
    const crowd = (at: Point): number => pinsWithin(field, at, ROUND_ABOUT * reach).length;
    const isLike = (there: Point): boolean => counts === undefined || crowd(there) >= ALIKE * crowd(place);
    const hear = (there: Point): void => {
      const pins = pinsWithin(field, there, reach);
      if (pins.some(counts ?? (() => true))) yes++;
      // Of a place in whole ground, a copy that lies in an opening says nothing.
      else if (pins.length === 0 && isLike(there)) no++;
    };
    for (const { motion, inside: isInside } of motions) {
      // Beyond its ends a pattern lacks nothing.
      if (!isInside(place, END * field.spacing)) continue;
      for (const times of timesOf(motion)) {
        const there = movedBy(motion, times, place);
        if (!isInside(there, 0)) continue;
        hear(there);
      }
    }
    // A mirror has but one copy of a place: it is asked where no others are.
    if (mirror !== null && yes + no === 0) {
      const image = mirrored(mirror, place);
      // On the line a place is its own image, and says nothing.
      if (distance(image, place) > 2 * reach) hear(image);
    }
    return { yes, no };
  };
}

/** How far round a place is looked, in parts of the reach, and the share of its pins that a copy must have there too. */
const ROUND_ABOUT = 4;
const ALIKE = 0.6;

/** A place on the last row may lie this part of the spacing beyond the last pin. */
const END = 0.15;

const MOST_COPIES = 24;

function timesOf(motion: Motion): number[] {
  if (motion.kind === 'turn') return Array.from({ length: motion.order - 1 }, (_, k) => k + 1);
  return Array.from({ length: MOST_COPIES }, (_, k) => (k % 2 === 0 ? 1 + k / 2 : -(k + 1) / 2));
}

function inside(field: Field, motion: Motion): (place: Point, beyond: number) => boolean {
  if (motion.kind === 'turn') return () => true;
  const { step } = motion;
  const size = length(step);
  let [least, most] = [Infinity, -Infinity];
  for (const { x, y } of field.pins) {
    const along = x * step.x + y * step.y;
    least = Math.min(least, along);
    most = Math.max(most, along);
  }
  return ({ x, y }, beyond) => {
    const along = x * step.x + y * step.y;
    return along >= least - beyond * size && along <= most + beyond * size;
  };
}
