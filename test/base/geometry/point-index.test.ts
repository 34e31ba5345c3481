import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { seededRandom } from '#base/random.ts';

const random = seededRandom(1961);
const scattered = (count: number, width: number, height: number): Point[] =>
  Array.from({ length: count }, () => ({ x: width * random(), y: height * random() }));

const sets: readonly (readonly [string, readonly Point[]])[] = [
  ['scattered', scattered(400, 100, 100)],
  ['in a long strip', scattered(400, 10_000, 3)],
  ['on one line', Array.from({ length: 300 }, (_, at) => ({ x: 2.5 * at, y: 7 }))],
  [
    'in two heaps far apart',
    [...scattered(200, 1, 1), ...scattered(200, 1, 1).map(({ x, y }) => ({ x: x + 1e6, y }))],
  ],
  ['heaped, with one far away', [...scattered(300, 1, 1), { x: 5e5, y: -5e5 }]],
  ['all in one place', Array.from({ length: 20 }, () => ({ x: 3, y: 3 }))],
  [
    'only two',
    [
      { x: 0, y: 0 },
      { x: 3, y: 4 },
    ],
  ],
  ['only one', [{ x: 1, y: 2 }]],
];

describe('how far the nearest other point lies', () => {
  for (const [name, points] of sets) {
    it(`is what comparing all of them gives: ${name}`, () => {
      const index = new PointIndex(points);
      for (const most of [1e9, 50, 0.5]) {
        points.forEach((point, at) => {
          const others = points.filter((_, other) => other !== at).map((other) => distance(point, other));
          expect(index.nearestTo(at, most)).toBe(Math.min(most, ...others));
        });
      }
    });
  }
});
