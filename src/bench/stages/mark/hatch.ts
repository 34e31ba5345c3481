import type { Stitch } from '#pattern/pattern.ts';

/**
 * By which lines stitches are told apart beside their colours: [across, down] of each line's way over a square of
 * side 1. Our own, no source.
 */
export const hatches: Readonly<Record<Stitch, readonly (readonly [number, number, number, number])[]>> = {
  cloth: [
    [0, 0.5, 1, 0.5],
    [0.5, 0, 0.5, 1],
  ],
  half: [
    [0, 1, 1, 0],
    [0, 0, 1, 1],
  ],
  whole: [[0, 1, 1, 0]],
  ground: [[0, 0, 1, 1]],
  filling: [[0, 0.5, 1, 0.5]],
  other: [[0.5, 0, 0.5, 1]],
};

/** Side of the square, CSS pixels. */
export const HATCH_SIDE = 10;
