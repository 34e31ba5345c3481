import { describe, expect, test } from 'vitest';
import { cubicLength, cubicPoint } from '#base/geometry/curve.ts';
import { cross, distance, type Point } from '#base/geometry/point.ts';
import { type Path, parallelOf } from '#paper/drawing/path.ts';

/** Length of a path, and twice what it encloses, by its own lines and curves. */
function measure(path: Path): { length: number; area: number } {
  let length = 0;
  let doubled = 0;
  let at: Point = { x: 0, y: 0 };
  let start = at;
  const go = (to: Point) => {
    doubled += cross(at, to);
    at = to;
  };
  for (const step of path) {
    if (step.step === 'move') {
      at = step.to;
      start = at;
    } else if (step.step === 'curve') {
      const curve = [at, step.first, step.second, step.to] as const;
      length += cubicLength(curve);
      for (let k = 1; k <= 500; k++) go(cubicPoint(curve, k / 500));
    } else {
      const to = step.step === 'close' ? start : step.to;
      length += distance(at, to);
      go(to);
    }
  }
  return { length, area: Math.abs(doubled) / 2 };
}

describe('the parallel of a rectangle, along which card and film are cut', () => {
  test('has the length and area of Steiner’s formula', () => {
    // J. Steiner 1840: a convex outline of area A and length L grown by d has A + L d + pi d^2 and L + 2 pi d;
    // 10 by 5 grown by 2 gives 122.56637061 and 42.56637061 (shapely's buffer with fine corners: 122.56635, 42.566366).
    const { length, area } = measure(parallelOf({ left: 3, top: 4, right: 13, bottom: 9 }, 2));
    // The quarter circles are cubic curves, which run up to 0.03 % of the radius outside.
    expect(Math.abs(length - 42.56637061)).toBeLessThan(2 * Math.PI * 2 * 3e-4);
    expect(Math.abs(area - 122.56637061)).toBeLessThan(Math.PI * 4 * 6e-4);
  });
});
