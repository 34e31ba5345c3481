import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull } from '#base/geometry/hull.ts';
import { cross, type Point, subtract } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';

const gridPoint = fc.record({ x: fc.integer({ min: 0, max: 12 }), y: fc.integer({ min: 0, max: 12 }) });
const sides = (outline: readonly Point[]) =>
  outline.map((from, at) => ({ from, to: outline[(at + 1) % outline.length]! }));
const twiceArea = (outline: readonly Point[]) =>
  Math.abs(sides(outline).reduce((sum, { from, to }) => sum + cross(from, to), 0));
const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b));

describe('the convex hull', () => {
  it('holds every point, turns one way only, and has only points as corners', () => {
    fc.assert(
      fc.property(fc.array(gridPoint, { minLength: 3, maxLength: 30 }), (points) => {
        const hull = convexHull(points);
        for (const corner of hull) expect(points).toContainEqual(corner);
        if (hull.length < 3) return;
        for (const { from, to } of sides(hull))
          for (const point of points)
            expect(cross(subtract(to, from), subtract(point, from))).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it.each([
    ['nothing', [], 0],
    [
      'one spot',
      [
        { x: 1, y: 2 },
        { x: 1, y: 2 },
      ],
      1,
    ],
    ['one line', [0, 3, 1, 2].map((x) => ({ x, y: 2 * x })), 2],
    [
      'a square with a middle',
      [
        [0, 0],
        [2, 0],
        [2, 2],
        [0, 2],
        [1, 1],
        [1, 0],
      ].map(([x, y]) => ({ x: x!, y: y! })),
      4,
    ],
  ])('of %s', (_, points, corners) => {
    expect(convexHull(points)).toHaveLength(corners);
  });
});

describe('inside an outline', () => {
  // Pick's theorem: area = inner grid points + half of those on the outline - 1.
  it('counts grid points as the theorem of Pick (1899) says', () => {
    fc.assert(
      fc.property(fc.array(gridPoint, { minLength: 3, maxLength: 12 }), (points) => {
        const outline = convexHull(points);
        fc.pre(outline.length >= 3);
        const onOutline = ({ x, y }: Point) =>
          sides(outline).some(
            ({ from, to }) =>
              cross(subtract(to, from), subtract({ x, y }, from)) === 0 &&
              x >= Math.min(from.x, to.x) &&
              x <= Math.max(from.x, to.x) &&
              y >= Math.min(from.y, to.y) &&
              y <= Math.max(from.y, to.y),
          );
        const grid = Array.from({ length: 169 }, (_, at) => ({ x: at % 13, y: Math.floor(at / 13) }));
        const inner = grid.filter((point) => !onOutline(point) && isInside(outline, point)).length;
        const border = sides(outline).reduce(
          (sum, { from, to }) => sum + common(Math.abs(to.x - from.x), Math.abs(to.y - from.y)),
          0,
        );
        expect(twiceArea(outline)).toBe(2 * inner + border - 2);
      }),
    );
  });

  it('is nowhere in an outline without corners', () => {
    expect(isInside([], { x: 0, y: 0 })).toBe(false);
  });
});
