import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { affineFit } from '#base/fit/affine.ts';
import { type Affine, applyAffine, compose, rotation, scaling, translation } from '#base/geometry/affine.ts';
import type { Point } from '#base/geometry/point.ts';
import { normal, seededRandom } from '#base/random.ts';

const map: Affine = compose(translation(30, -7), compose(rotation(0.4), scaling(11.8, 11.9)));

describe('the affine map of least squares', () => {
  it.each([1e-4, 1, 1e4])('gives back an exact map on a grid of size %d', (size) => {
    const grid = Array.from({ length: 30 }, (_, k) => ({ x: size * (k % 6), y: size * Math.floor(k / 6) }));
    const fitted = affineFit(
      grid,
      grid.map((point) => applyAffine(map, point)),
    )!;
    for (const key of ['a', 'b', 'c', 'd'] as const) expect(fitted[key]).toBeCloseTo(map[key], 6);
    for (const point of grid) {
      const [is, want] = [applyAffine(fitted, point), applyAffine(map, point)];
      expect(Math.hypot(is.x - want.x, is.y - want.y)).toBeLessThan(1e-9 * Math.max(1, size) * 100);
    }
  });

  it('agrees on noisy points with the least-squares solver of ml-matrix 6 (singular value decomposition)', () => {
    const random = seededRandom(41);
    const from = Array.from({ length: 50 }, () => ({ x: 100 * random(), y: 60 * random() }));
    const to = from.map((point) => {
      const { x, y } = applyAffine(map, point);
      return { x: x + normal(random), y: y + normal(random) };
    });
    const design = new Matrix(from.map(({ x, y }) => [x, y, 1]));
    const peer = solve(design, new Matrix(to.map(({ x, y }) => [x, y])), true);
    const fitted = affineFit(from, to)!;
    const want = [
      peer.get(0, 0),
      peer.get(0, 1),
      peer.get(1, 0),
      peer.get(1, 1),
      peer.get(2, 0),
      peer.get(2, 1),
    ];
    const is = [fitted.a, fitted.b, fitted.c, fitted.d, fitted.e, fitted.f];
    is.forEach((value, k) => {
      expect(value).toBeCloseTo(want[k]!, 8);
    });
  });

  it('says null where the points do not fix a map', () => {
    const line: Point[] = Array.from({ length: 9 }, (_, k) => ({ x: 3 * k, y: 2 * k + 1 }));
    expect(affineFit(line, line)).toBeNull();
    expect(affineFit(line.slice(0, 2), line.slice(0, 2))).toBeNull();
    expect(affineFit([], [])).toBeNull();
    expect(() => affineFit(line, line.slice(1))).toThrow(RangeError);
  });
});
