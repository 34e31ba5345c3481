import type { Point } from '#base/geometry/point.ts';
import { type Motion, movedBy } from './copies.ts';
import { type Field, pinsWithin } from './field.ts';
import type { Copies } from './repeats.ts';

/** What the other copies of a place say: in how many a pin stands there, and in how many none does. */
export interface Witness {
  readonly yes: number;
  readonly no: number;
}

/** Asks the copies of a pattern about places in it. */
export function witnesses(field: Field, copies: readonly Copies[]): (place: Point, reach: number) => Witness {
  const motions = copies.map(({ motion }) => ({ motion, inside: inside(field, motion) }));
  return (place, reach) => {
    let [yes, no] = [0, 0];
    for (const { motion, inside: isInside } of motions) {
      for (const times of timesOf(motion)) {
        const there = movedBy(motion, times, place);
        if (!isInside(there)) continue;
        if (pinsWithin(field, there, reach).length > 0) yes++;
        else no++;
      }
    }
    return { yes, no };
  };
}

const MOST_COPIES = 24;

function timesOf(motion: Motion): number[] {
  if (motion.kind === 'turn') return Array.from({ length: motion.order - 1 }, (_, k) => k + 1);
  return Array.from({ length: MOST_COPIES }, (_, k) => (k % 2 === 0 ? 1 + k / 2 : -(k + 1) / 2));
}

function inside(field: Field, motion: Motion): (place: Point) => boolean {
  if (motion.kind === 'turn') return () => true;
  const { step } = motion;
  let [least, most] = [Infinity, -Infinity];
  for (const { x, y } of field.pins) {
    const along = x * step.x + y * step.y;
    least = Math.min(least, along);
    most = Math.max(most, along);
  }
  return ({ x, y }) => x * step.x + y * step.y >= least && x * step.x + y * step.y <= most;
}
