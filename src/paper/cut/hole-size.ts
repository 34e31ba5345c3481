/** What is known of the hole that is wanted, mm; whatever is not said is left out. */
export interface HoleWish {
  /** The finished hole. */
  readonly hole?: number;
  /** The pin that will stand in it. */
  readonly pin?: number;
}

/**
 * The finished hole, mm: as asked for, else a little finer than the pin, as a needle is, so that the card grips the pin
 * (common practice, no source; nine tenths is our default), else 0.5 mm for a medium pin (from memory).
 */
export function holeSize({ hole, pin }: HoleWish): number {
  if (hole !== undefined) return hole;
  return pin === undefined ? MEDIUM_HOLE : Math.round(pin * GRIP * 1000) / 1000;
}

const GRIP = 0.9;
const MEDIUM_HOLE = 0.5;
