import type { Random } from '#base/random.ts';

/** A smooth random field over the plane with values in [-1, 1] and bumps about one unit wide. */
export type Field = (x: number, y: number) => number;

const SIZE = 128;

/** Value noise: random numbers at whole places, blended between them; it repeats every 128 units. */
export function smoothField(random: Random): Field {
  const values = Float32Array.from({ length: SIZE * SIZE }, () => 2 * random() - 1);
  return (x, y) => {
    const column = Math.floor(x);
    const row = Math.floor(y);
    const u = ease(x - column);
    const v = ease(y - row);
    const left = column & (SIZE - 1);
    const right = (column + 1) & (SIZE - 1);
    const upper = (row & (SIZE - 1)) * SIZE;
    const lower = ((row + 1) & (SIZE - 1)) * SIZE;
    const top = values[upper + left]! * (1 - u) + values[upper + right]! * u;
    const bottom = values[lower + left]! * (1 - u) + values[lower + right]! * u;
    return top * (1 - v) + bottom * v;
  };
}

const ease = (t: number): number => t * t * (3 - 2 * t);
