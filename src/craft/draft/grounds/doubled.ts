import { groundOf } from './ground.ts';

/**
 * Doubled ground: every stitch is made twice, each time on a pin of its own, before its two pairs part. Two pins
 * stand one below the other, and the third place of each column stays empty: six-sided meshes with upright sides,
 * regular at 60 degrees.
 */
export const doubled = groundOf(
  'doubled',
  [2, 6],
  [
    [0, 0],
    [0, 2],
    [1, 3],
    [1, 5],
  ],
  [
    [0, 0, 0, 2],
    [0, 2, -1, 1],
    [0, 2, 1, 1],
    [1, 3, 0, 2],
    [1, 5, -1, 1],
    [1, 5, 1, 1],
  ],
);
