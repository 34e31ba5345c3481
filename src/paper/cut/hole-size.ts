import { holeForPin } from '#pattern/hole-for-pin.ts';

/** What is known of the hole that is wanted, mm; whatever is not said is left out. */
export interface HoleWish {
  /** The finished hole. */
  readonly hole?: number;
  /** The pin that will stand in it. */
  readonly pin?: number;
}

/**
 * The finished hole, mm: as asked for, else such that the card grips the pin, else 0.5 mm for a medium pin (from
 * memory).
 */
export function holeSize({ hole, pin }: HoleWish): number {
  if (hole !== undefined) return hole;
  return pin === undefined ? MEDIUM_HOLE : holeForPin(pin);
}

const MEDIUM_HOLE = 0.5;
