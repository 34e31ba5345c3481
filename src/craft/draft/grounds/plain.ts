import { groundOf } from './ground.ts';

/** Plain ground: a pin at every place, and two pairs from each to the next places below, left and right. */
export const plain = groundOf(
  'plain',
  [2, 2],
  [
    [0, 0],
    [1, 1],
  ],
  [
    [0, 0, -1, 1],
    [0, 0, 1, 1],
    [1, 1, -1, 1],
    [1, 1, 1, 1],
  ],
);
