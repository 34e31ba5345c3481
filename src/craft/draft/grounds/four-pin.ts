import { groundOf } from './ground.ts';

/**
 * Four-pin ground: small diamonds of four pins, and a line of the lattice left empty between each diamond and the
 * next. Two pairs go from diamond to diamond side by side.
 */
export const fourPin = groundOf(
  'four-pin',
  [6, 6],
  [
    [0, 0],
    [5, 1],
    [1, 1],
    [0, 2],
    [3, 3],
    [2, 4],
    [4, 4],
    [3, 5],
  ],
  [...diamond(0, 0), ...diamond(3, 3)],
);

/** The sides of the diamond whose top pin stands at (i, j), and the pairs that leave it. */
function diamond(i: number, j: number) {
  return [
    [i, j, -1, 1],
    [i, j, 1, 1],
    [i - 1, j + 1, 1, 1],
    [i + 1, j + 1, -1, 1],
    [i - 1, j + 1, -2, 2],
    [i, j + 2, -2, 2],
    [i + 1, j + 1, 2, 2],
    [i, j + 2, 2, 2],
  ] as const;
}
