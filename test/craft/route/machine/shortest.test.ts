import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '#base/geometry/point.ts';
import { normal, seededRandom } from '#base/random.ts';
import { shortestTour } from '#craft/route/machine/shortest.ts';
import { lengthOf } from './tours.ts';

const coordinate = fc.double({ min: -500, max: 500, noNaN: true });
/** Whole numbers as well, so that holes often coincide, stand in line and are equally far apart. */
const hole = fc.oneof(
  fc.record({ x: coordinate, y: coordinate }),
  fc.record({ x: fc.integer({ min: 0, max: 6 }), y: fc.integer({ min: 0, max: 6 }) }),
);
const holesOf = (maxLength: number) => fc.array(hole, { maxLength });

describe('the shortest tour', () => {
  test('takes every hole once, says its true length, and gives the same each time', () => {
    fc.assert(
      fc.property(holesOf(60), (holes) => {
        const { order, length } = shortestTour(holes);
        expect(order.toSorted((a, b) => a - b)).toEqual([...holes.keys()]);
        expect(length).toBeCloseTo(lengthOf(order, holes), 6);
        expect(shortestTour(holes).order).toEqual(order);
      }),
      { numRuns: 60, seed: 1 },
    );
  });

  test('of up to seven holes is the shortest there is', () => {
    fc.assert(
      fc.property(holesOf(7), (holes) => {
        expect(shortestTour(holes).length).toBeLessThanOrEqual(shortestOfAll(holes) + 1e-6);
      }),
      { numRuns: 100, seed: 2 },
    );
  });

  test('is never longer than the order in which the holes came', () => {
    fc.assert(
      fc.property(holesOf(40), (holes) => {
        expect(shortestTour(holes).length).toBeLessThanOrEqual(lengthOf([...holes.keys()], holes) + 1e-6);
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  test('of no, one, two and three holes', () => {
    expect(shortestTour([])).toEqual({ order: [], length: 0 });
    expect(shortestTour([{ x: 3, y: 4 }])).toEqual({ order: [0], length: 0 });
    expect(shortestTour(triangle.slice(0, 2)).length).toBe(6);
    expect(shortestTour(triangle).length).toBe(12);
  });

  test('of holes that all coincide goes nowhere', () => {
    const { order, length } = shortestTour(Array.from({ length: 50 }, () => ({ x: 1, y: 2 })));
    expect(order).toHaveLength(50);
    expect(length).toBe(0);
  });

  test('of holes in one line goes there and back', () => {
    const holes = Array.from({ length: 300 }, (_, at) => ({
      x: 3 * ((at * 97) % 300),
      y: 4 * ((at * 97) % 300),
    }));
    expect(shortestTour(holes).length).toBeCloseTo(2 * 5 * 299, 6);
  });
});

// On an even grid a tour of n steps of one spacing exists, and none can be shorter.
describe.each([
  ['exact', (x: number, y: number) => ({ x, y })],
  ['turned by 0.3', (x: number, y: number) => turned({ x, y }, 0.3)],
  ['a million times as large', (x: number, y: number) => ({ x: 1e6 * x, y: 1e6 * y })],
  ['a million times as small', (x: number, y: number) => ({ x: 1e-6 * x, y: 1e-6 * y })],
  ['far from the origin', (x: number, y: number) => ({ x: x + 1e5, y: y - 1e5 })],
] as const)('a grid of 30 by 20 holes, %s', (_, place) => {
  const holes = Array.from({ length: 600 }, (__, at) => place(2 * (at % 30), 2 * Math.floor(at / 30)));
  const spacing = lengthOf([0, 1], holes) / 2;
  test('needs hardly more than a step a hole', () => {
    const { length } = shortestTour(holes);
    expect(length / spacing).toBeGreaterThanOrEqual(600 - 1e-6);
    expect(length / spacing).toBeLessThanOrEqual(600 * 1.03);
  });
});

test('how good a tour is does not hang on how the pattern lies', () => {
  const random = seededRandom(11);
  const holes = Array.from({ length: 500 }, (_, at) => ({
    x: 2 * (at % 25) + 0.2 * normal(random),
    y: 2 * Math.floor(at / 25) + 0.2 * normal(random),
  }));
  const lengths = [0, 0.2, 0.7, 1.1, 2].map(
    (angle) => shortestTour(holes.map((at) => turned(at, angle))).length,
  );
  expect(Math.max(...lengths) / Math.min(...lengths)).toBeLessThan(1.02);
});

const triangle = [
  { x: 0, y: 0 },
  { x: 3, y: 0 },
  { x: 3, y: 4 },
];

function turned({ x, y }: Point, angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: cos * x - sin * y, y: sin * x + cos * y };
}

/** By trying every order. */
function shortestOfAll(holes: readonly Point[]): number {
  if (holes.length === 0) return 0;
  const orders = (rest: readonly number[]): number[][] =>
    rest.length === 0
      ? [[]]
      : rest.flatMap((next) => orders(rest.filter((one) => one !== next)).map((order) => [next, ...order]));
  return Math.min(...orders([...holes.keys()].slice(1)).map((order) => lengthOf([0, ...order], holes)));
}
