/**
 * The finished hole for a pin, mm: a little finer than the pin, as the needle is that makes it, so that the card grips
 * (common practice, no source; nine tenths is our default).
 */
export const holeForPin = (pin: number): number => Math.round(pin * GRIP * 1000) / 1000;

const GRIP = 0.9;
