import { describe, expect, it } from 'vitest';
import { distanceInside } from '#base/picture/distance-inside.ts';
import { thin } from '#base/picture/thin.ts';
import { seededRandom } from '#base/random.ts';

describe('how far pixels lie inside a region', () => {
  it('counts in thirds of a pixel from the outside, and from the edge of the picture', () => {
    const mask = maskOf(['.......', '.#####.', '.#####.', '.#####.', '.......']);
    const far = distanceInside(mask, 7, 5);
    expect(rowsOf(far, 7)).toEqual(['0000000', '0333330', '0366630', '0333330', '0000000']);
    expect(rowsOf(distanceInside(maskOf(['###', '###', '###']), 3, 3), 3)).toEqual(['333', '363', '333']);
  });

  it('stays within 8 % of the true distance (Borgefors 1986 gives that bound for steps of 3 and 4)', () => {
    const size = 61;
    const mask = new Uint8Array(size * size);
    const random = seededRandom(8);
    for (let row = 1; row < size - 1; row++) mask.fill(1, row * size + 1, (row + 1) * size - 1);
    for (let k = 0; k < 12; k++) mask[Math.floor(random() * size * size)] = 0;
    const outside = [...mask.keys()].filter((at) => mask[at] === 0);
    const far = distanceInside(mask, size, size);
    for (let at = 0; at < mask.length; at++) {
      if (mask[at] === 0) continue;
      const true_ = Math.min(
        ...outside.map((other) =>
          Math.hypot((at % size) - (other % size), Math.floor(at / size) - Math.floor(other / size)),
        ),
      );
      expect(Math.abs(far[at]! / 3 - true_)).toBeLessThan(0.081 * true_ + 1e-9);
    }
  });
});

describe('thinning', () => {
  it('leaves a bar one pixel wide, and a ring closed', () => {
    const bar = maskOf(['.........', '.#######.', '.#######.', '.#######.', '.........']);
    const left = thin(bar, 9, setOf(bar));
    expect(new Set(left.map((at) => Math.floor(at / 9)))).toEqual(new Set([2]));
    expect(left.length).toBeGreaterThanOrEqual(4);

    const size = 41;
    const ring = new Uint8Array(size * size);
    for (let at = 0; at < ring.length; at++) {
      const from = Math.hypot((at % size) - 20, Math.floor(at / size) - 20);
      if (from > 10 && from < 15) ring[at] = 1;
    }
    const line = thin(ring, size, setOf(ring));
    expect(setOf(ring)).toEqual([...line].sort((a, b) => a - b));
    // Every pixel of a closed line one pixel wide has a neighbour on either side.
    for (const at of line) {
      const near = line.filter(
        (other) =>
          other !== at &&
          Math.abs((at % size) - (other % size)) <= 1 &&
          Math.abs(Math.floor(at / size) - Math.floor(other / size)) <= 1,
      );
      expect(near.length).toBeGreaterThanOrEqual(2);
    }
  });
});

const maskOf = (rows: readonly string[]): Uint8Array =>
  Uint8Array.from(rows.join(''), (sign) => (sign === '#' ? 1 : 0));

const setOf = (mask: Uint8Array): number[] => [...mask.keys()].filter((at) => mask[at] === 1);

const rowsOf = (values: Uint8Array, width: number): string[] =>
  Array.from({ length: values.length / width }, (_, row) =>
    values.subarray(row * width, (row + 1) * width).join(''),
  );
