import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { machineOrder } from '#craft/route/machine/order.ts';
import { lengthOf } from './tours.ts';

const holes = fc.array(
  fc.record({
    x: fc.double({ min: 0, max: 30, noNaN: true }),
    y: fc.double({ min: 0, max: 30, noNaN: true }),
  }),
  { maxLength: 50 },
);

test('says what it comes to, with heat spread or without', () => {
  fc.assert(
    fc.property(holes, fc.constantFrom(null, 2, 5, 12), (places, spread) => {
      const { order, length, nearest, tooNear } = machineOrder(places, spread);
      expect(order.toSorted((a, b) => a - b)).toEqual([...places.keys()]);
      expect(length).toBeCloseTo(lengthOf(order, places), 6);
      const steps = stepsOf(order, places);
      expect(nearest).toBe(steps.length < 2 ? 0 : Math.min(...steps));
      expect(tooNear).toBe(
        spread === null || steps.length < 2 ? 0 : steps.filter((step) => step < spread).length,
      );
    }),
    { numRuns: 150, seed: 4 },
  );
});

test('starts at the hole nearest the lower left corner', () => {
  const grid = Array.from({ length: 63 }, (_, at) => ({ x: at % 9, y: Math.floor(at / 9) }));
  for (const spread of [null, 2]) expect(grid[machineOrder(grid, spread).order[0]!]).toEqual({ x: 0, y: 6 });
});

describe('spreading the heat', () => {
  // G. A. Dirac, Proc. London Math. Soc. 2 (1952) 69-81: then such an order exists.
  test('leaves no short step where every hole has at least half of the holes far enough from it', () => {
    fc.assert(
      fc.property(holes, (places) => {
        fc.pre(places.length >= 3);
        expect(machineOrder(places, widestDirac(places)).tooNear).toBe(0);
      }),
      { numRuns: 300, seed: 5 },
    );
  });

  test('holds for two tight groups, where the order must go to and fro between them', () => {
    const random = seededRandom(6);
    const places = Array.from({ length: 80 }, (_, at) => ({ x: 20 * (at % 2) + random(), y: random() }));
    expect(widestDirac(places)).toBeGreaterThan(5);
    const { order, tooNear } = machineOrder(places, 5);
    expect(tooNear).toBe(0);
    expect(new Set(order.map((hole, at) => (hole + at) % 2)).size).toBe(1);
  });

  test.each([1.5, 2, 3, 5])('keeps 5 mm on a ground whose pins stand %d mm apart', (spacing) => {
    const places = Array.from({ length: 1500 }, (_, at) => ({
      x: spacing * ((at % 30) + 0.5 * (Math.floor(at / 30) % 2)),
      y: 0.5 * spacing * Math.floor(at / 30),
    }));
    const { nearest, tooNear, length } = machineOrder(places, 5);
    expect(tooNear).toBe(0);
    expect(nearest).toBeGreaterThanOrEqual(5);
    // No order that keeps 5 mm is shorter than 5 mm a hole; ours does not wander off either.
    expect(length).toBeGreaterThanOrEqual(5 * 1500);
    expect(length).toBeLessThan(2.5 * 5 * 1500);
  });

  test('does what it can where the holes stand too close', () => {
    const places = Array.from({ length: 40 }, (_, at) => ({ x: 0.1 * at, y: 0 }));
    const { order, tooNear } = machineOrder(places, 5);
    expect(order.toSorted((a, b) => a - b)).toEqual([...places.keys()]);
    expect(tooNear).toBe(40);
  });
});

const stepsOf = (order: readonly number[], places: readonly Point[]): number[] =>
  order.map((hole, at) => distance(places[hole]!, places[order[(at + 1) % order.length]!]!));

/** The widest spread at which every hole has at least half of the holes that far from it. */
const widestDirac = (places: readonly Point[]): number =>
  Math.min(
    ...places.map((one) => {
      const away = places.map((other) => distance(one, other)).sort((a, b) => b - a);
      return away[Math.ceil(places.length / 2) - 1]!;
    }),
  );
