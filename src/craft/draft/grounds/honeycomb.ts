import { groundOf } from './ground.ts';

/**
 * Honeycomb: along each line of the lattice, full rows of pins by turns with gap rows, where every second place stays
 * empty. Six pins stand round each gap; at 60 degrees the gaps are regular hexagons.
 */
export const honeycomb = groundOf(
  'honeycomb',
  [4, 4],
  [
    [0, 0],
    [2, 2],
    [1, 1],
    [3, 1],
    [1, 3],
    [3, 3],
  ],
  [
    [0, 0, -1, 1],
    [0, 0, 1, 1],
    [2, 2, -1, 1],
    [2, 2, 1, 1],
    [1, 1, 1, 1],
    [1, 1, 0, 2],
    [3, 1, -1, 1],
    [3, 1, 0, 2],
    [1, 3, -1, 1],
    [1, 3, 0, 2],
    [3, 3, 1, 1],
    [3, 3, 0, 2],
  ],
);
