import { groundOf } from './ground.ts';

/**
 * Rose ground: the places of the plain ground in squares of four, set on their corners. From square to square go two
 * pairs that meet half-way in a stitch without a pin: their two working lines cross there.
 */
export const rose = groundOf(
  'rose',
  [4, 4],
  [
    [0, 0],
    [3, 1],
    [1, 1],
    [0, 2],
    [2, 2],
    [1, 3],
    [3, 3],
    [2, 0],
  ],
  [...square(0, 0), ...square(2, 2)],
);

/** The sides of the square whose top pin stands at (i, j), and the links that leave it. */
function square(i: number, j: number) {
  return [
    [i, j, -1, 1],
    [i, j, 1, 1],
    [i - 1, j + 1, 1, 1],
    [i + 1, j + 1, -1, 1],
    [i - 1, j + 1, 0, 2],
    [i + 1, j + 1, 0, 2],
    [i, j + 2, -2, 0],
    [i, j + 2, 2, 0],
  ] as const;
}
