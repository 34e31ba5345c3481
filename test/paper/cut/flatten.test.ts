import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between, type Point } from '#base/geometry/point.ts';
import { circleCorners, flatten } from '#paper/cut/flatten.ts';

const mm = fc.integer({ min: -50_000, max: 50_000 }).map((thousandths) => thousandths / 1000);
const place = fc.record({ x: mm, y: mm });

// Against points of the curve by de Casteljau's construction (P. de Casteljau, 1959), which the code does not use.
test('no chord errs by more than 0.01 mm from its curve', () => {
  fc.assert(
    fc.property(place, place, place, place, (from, first, second, to) => {
      const [chain] = flatten([
        { step: 'move', to: from },
        { step: 'curve', first, second, to },
      ]);
      const { points } = chain!;
      expect(points[0]).toEqual(from);
      expect(points.at(-1)).toEqual(to);
      for (let k = 1; k < points.length; k += 7) {
        const middle = casteljau([from, first, second, to], (k - 0.5) / (points.length - 1));
        const [a, b] = [points[k - 1]!, points[k]!];
        const length = Math.hypot(b.x - a.x, b.y - a.y);
        const t =
          length === 0 ? 0 : ((middle.x - a.x) * (b.x - a.x) + (middle.y - a.y) * (b.y - a.y)) / length ** 2;
        const near = Math.min(1, Math.max(0, t));
        const away = Math.hypot(a.x + near * (b.x - a.x) - middle.x, a.y + near * (b.y - a.y) - middle.y);
        expect(away).toBeLessThan(0.0101);
      }
    }),
    { numRuns: 100, seed: 11 },
  );
});

test.each([0.1, 0.5, 2, 10, 100])('a circle of %f mm as a polygon errs by at most 0.01 mm', (diameter) => {
  const corners = circleCorners({ x: 5, y: 7 }, diameter);
  const first = corners[0]!;
  expect(first.x - 5).toBeCloseTo(diameter / 2, 9);
  corners.forEach((corner, k) => {
    const next = corners[(k + 1) % corners.length]!;
    expect(Math.hypot(corner.x - 5, corner.y - 7)).toBeCloseTo(diameter / 2, 9);
    const middle = Math.hypot((corner.x + next.x) / 2 - 5, (corner.y + next.y) / 2 - 7);
    expect(diameter / 2 - middle).toBeLessThan(0.01 + 1e-9);
  });
});

function casteljau(points: readonly Point[], t: number): Point {
  return points.length === 1
    ? points[0]!
    : casteljau(
        points.slice(1).map((to, k) => between(points[k]!, to, t)),
        t,
      );
}
