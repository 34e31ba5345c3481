import { expect, test } from 'vitest';
import { distance } from '#base/geometry/point.ts';
import { machineOrder } from '#craft/route/machine/order.ts';
import { shortestTour } from '#craft/route/machine/shortest.ts';
import { shortestTree } from '#craft/route/tree.ts';
import { describeWith, outsideFile } from '../../../support/outside.ts';
import { lengthOf } from './tours.ts';

describeWith(
  ['drilling-tour'],
  'd493, a real drilling problem (G. Reinelt, TSPLIB, ORSA J. Computing 3, 1991)',
  () => {
    const holes = placesIn(new TextDecoder().decode(outsideFile('drilling-tour', 'd493.tsp')));

    test('is read as published: the tour 1 to n measures 113549 in whole steps', () => {
      expect(holes).toHaveLength(493);
      const whole = holes.map((hole, at) => Math.round(distance(hole, holes[(at + 1) % holes.length]!)));
      expect(whole.reduce((sum, step) => sum + step)).toBe(113_549);
    });

    test('the tour lies between the Held-Karp bound and 3 % over it', () => {
      const { order, length } = shortestTour(holes);
      expect(order.toSorted((a, b) => a - b)).toEqual([...holes.keys()]);
      expect(length).toBeCloseTo(lengthOf(order, holes), 6);
      expect(length).toBeGreaterThanOrEqual(HELD_KARP);
      expect(length).toBeLessThanOrEqual(1.03 * HELD_KARP);
      // The shortest tour there is, in TSPLIB's whole steps, is 35002 (TSPLIB, best solutions).
      const whole = order.map((hole, at) =>
        Math.round(distance(holes[hole]!, holes[order[(at + 1) % order.length]!]!)),
      );
      expect(whole.reduce((sum, step) => sum + step)).toBeGreaterThanOrEqual(35_002);
    });
  },
);

describeWith(
  ['drill-board'],
  'the 2704 holes of a real board (drill0.exc, from the Debian package gerbv)',
  () => {
    const holes = holesIn(new TextDecoder().decode(outsideFile('drill-board', 'drill0.exc')));

    test('are taken once each, on less way than the board was drilled with', () => {
      expect(holes).toHaveLength(2704);
      const { order, length } = shortestTour(holes);
      expect(order.toSorted((a, b) => a - b)).toEqual([...holes.keys()]);
      expect(length).toBeCloseTo(lengthOf(order, holes), 3);
      expect(length).toBeLessThan(0.8 * lengthOf([...holes.keys()], holes));
      // Any tour less one of its steps joins all holes, so that none is shorter than the shortest tree.
      const tree = shortestTree(holes).reduce((sum, link) => sum + link.length, 0);
      expect(length).toBeGreaterThan(tree);
      expect(length).toBeLessThan(1.2 * tree);
    });

    test('are spread so that the next hole is never nearer than 5 mm', () => {
      // The file counts in 1/100000 inch.
      const places = holes.map(({ x, y }) => ({ x: x * 0.000254, y: y * 0.000254 }));
      expect(machineOrder(places, 5).tooNear).toBe(0);
    });
  },
);

/** Excellon lists a coordinate only where it changes. */
function holesIn(excellon: string): { x: number; y: number }[] {
  let [x, y] = [0, 0];
  return excellon.split('\n').flatMap((line) => {
    const [, across, down] = /^(?:X(-?\d+))?(?:Y(-?\d+))?\s*$/.exec(line) ?? [];
    if (across === undefined && down === undefined) return [];
    [x, y] = [Number(across ?? x), Number(down ?? y)];
    return [{ x, y }];
  });
}

/** The subtour relaxation in real distances, solved to its optimum as a linear program: no tour is shorter. */
const HELD_KARP = 34_842.9035;

function placesIn(tsplib: string): { x: number; y: number }[] {
  const lines = tsplib.slice(tsplib.indexOf('NODE_COORD_SECTION')).split('\n').slice(1);
  return lines.flatMap((line) => {
    const [, x, y] = /^\s*\d+\s+(\S+)\s+(\S+)\s*$/.exec(line) ?? [];
    return x === undefined || y === undefined ? [] : [{ x: Number(x), y: Number(y) }];
  });
}
