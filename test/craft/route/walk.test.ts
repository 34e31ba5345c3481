import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { shortestTree } from '#craft/route/tree.ts';
import { outsidePoints } from '#craft/route/triangulate.ts';
import { walk } from '#craft/route/walk.ts';

const anyPoints = fc.array(
  fc.record({ x: fc.integer({ min: 0, max: 30 }), y: fc.integer({ min: 0, max: 30 }) }),
  { minLength: 1, maxLength: 40 },
);

describe('the shortest tree', () => {
  /** Prim's method on all pairs: slow, and nothing like the code it judges. */
  function shortestByPrim(points: readonly Point[]): number {
    let total = 0;
    const away = points.map((point) => distance(point, points[0]!));
    const outside = new Set(points.keys());
    outside.delete(0);
    while (outside.size > 0) {
      const next = [...outside].reduce((one, other) => (away[other]! < away[one]! ? other : one));
      total += away[next]!;
      outside.delete(next);
      for (const other of outside)
        away[other] = Math.min(away[other]!, distance(points[next]!, points[other]!));
    }
    return total;
  }

  it('is as short as the one found by trying all pairs', () => {
    fc.assert(
      fc.property(anyPoints, (points) => {
        const total = shortestTree(points).reduce((sum, link) => sum + link.length, 0);
        expect(total).toBeCloseTo(shortestByPrim(points), 6);
      }),
    );
  });
});

describe('a walk', () => {
  it('meets every point once and starts at the nearest to the hand', () => {
    fc.assert(
      fc.property(anyPoints, (points) => {
        const start = { x: 3, y: 40 };
        const order = walk(points, start);
        expect(order.toSorted((a, b) => a - b)).toEqual(points.map((_, at) => at));
        const nearest = Math.min(...points.map((point) => distance(point, start)));
        expect(distance(points[order[0]!]!, start)).toBe(nearest);
      }),
    );
  });

  it('is never longer than twice the shortest tree, less its last way back', () => {
    fc.assert(
      fc.property(anyPoints, (points) => {
        const order = walk(points, null);
        const way = order
          .slice(1)
          .reduce((sum, to, at) => sum + distance(points[order[at]!]!, points[to]!), 0);
        const tree = shortestTree(points).reduce((sum, link) => sum + link.length, 0);
        expect(way).toBeLessThanOrEqual(2 * tree + 1e-9);
      }),
    );
  });

  it('follows a curve from one end to the other', () => {
    const spiral = Array.from({ length: 50 }, (_, at) => ({
      x: (5 + 0.4 * at) * Math.cos(at / 6),
      y: (5 + 0.4 * at) * Math.sin(at / 6),
    }));
    const order = walk(spiral, spiral[0]!);
    expect(order).toEqual(spiral.map((_, at) => at));
  });
});

describe('the outside', () => {
  it('of a jittered block is its rim', () => {
    const random = seededRandom(3);
    const block = Array.from({ length: 100 }, (_, at) => ({
      x: (at % 10) + 0.1 * random(),
      y: Math.floor(at / 10) + 0.1 * random(),
    }));
    const outside = outsidePoints(block, 1);
    for (const at of block.keys()) {
      const [column, row] = [at % 10, Math.floor(at / 10)];
      expect(outside.has(at)).toBe(column === 0 || column === 9 || row === 0 || row === 9);
    }
  });

  it('of a U reaches into its bay', () => {
    const bay: Point[] = [];
    for (let x = 0; x < 12; x++)
      for (let y = 0; y < 12; y++)
        if (x < 3 || x > 8 || y > 8) bay.push({ x: x + 0.01 * y, y: y + 0.013 * x });
    const outside = outsidePoints(bay, 1);
    const at = bay.findIndex(({ x, y }) => Math.round(x) === 2 && Math.round(y) === 5);
    expect(outside.has(at)).toBe(true);
    const deep = bay.findIndex(({ x, y }) => Math.round(x) === 1 && Math.round(y) === 5);
    expect(outside.has(deep)).toBe(false);
  });
});
