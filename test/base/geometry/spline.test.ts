import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cubicChain } from '#base/geometry/cubic-chain.ts';
import type { Cubic } from '#base/geometry/curve.ts';
import { curvature } from '#base/geometry/motion.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { periodicSpline, splineThrough } from '#base/geometry/spline.ts';

const points = [
  [0, 0],
  [10, 2],
  [12, 9],
  [3, 14],
  [20, 20],
].map(([x, y]) => ({ x: x!, y: y! }));

const middles = (cubics: readonly Cubic[]): Point[] =>
  cubics.map((_, span) => cubicChain(cubics).motionAt(span + 0.5).place);

const near = (found: readonly Point[], known: readonly (readonly [number, number])[]): void => {
  expect(found).toHaveLength(known.length);
  found.forEach(({ x, y }, k) => {
    expect(x).toBeCloseTo(known[k]![0], 9);
    expect(y).toBeCloseTo(known[k]![1], 9);
  });
};

describe('splines agree with SciPy 1.17.1 (interpolate.CubicSpline, the same knots)', () => {
  it('natural', () => {
    near(middles(splineThrough(points)), [
      [5.403615594292, 0.239932630964],
      [12.448245360221, 5.335652305319],
      [7.024374582186, 11.957383186897],
      [7.794379197847, 16.864235434838],
    ]);
  });

  it('closed', () => {
    near(middles(periodicSpline(points, { x: 0, y: 0 })), [
      [3.434109377697, -0.783579150385],
      [13.005373789718, 5.625314701298],
      [6.231166076046, 11.544499923742],
      [11.500746392631, 18.794151573054],
      [10.757183202315, 10.402281766303],
    ]);
  });

  it('coming again by a step', () => {
    near(middles(periodicSpline(points, { x: 5, y: 30 })), [
      [3.296673420738, 0.798306932435],
      [13.044626455834, 5.196107956024],
      [6.173944283094, 12.090508211422],
      [11.769986069098, 16.333627142507],
      [13.03194588607, 25.631357081119],
    ]);
    near(middles(periodicSpline(points.slice(0, 2), { x: 20, y: 1 })), [
      [5, 1],
      [15, 1.5],
    ]);
  });
});

const coordinate = fc.integer({ min: -50, max: 50 });
const apart = fc
  .uniqueArray(fc.record({ x: coordinate, y: coordinate }), {
    minLength: 3,
    maxLength: 20,
    selector: ({ x, y }) => `${x},${y}`,
  })
  .filter((list) => distance(list[0]!, list.at(-1)!) > 0);

describe('any spline', () => {
  it('goes through its points, and bends without a jump', () => {
    fc.assert(
      fc.property(apart, fc.boolean(), (list, closed) => {
        const { spans, motionAt } = cubicChain(
          closed ? periodicSpline(list, { x: 0, y: 0 }) : splineThrough(list),
        );
        list.forEach((point, k) => {
          if (k < spans) expect(distance(motionAt(k).place, point)).toBeLessThan(1e-9);
        });
        for (let joint = closed ? 0 : 1; joint < spans; joint++) {
          const before = motionAt((joint === 0 ? spans : joint) - 1e-10);
          const after = motionAt(joint);
          fc.pre(Math.hypot(after.velocity.x, after.velocity.y) > 0.1);
          const bend = curvature(after);
          expect(Math.abs(curvature(before) - bend)).toBeLessThan(1e-6 * (1 + Math.abs(bend)));
        }
      }),
    );
  });

  it('turns with its points', () => {
    fc.assert(
      fc.property(apart, (list) => {
        const turned = list.map(({ x, y }) => ({ x: -y, y: x }));
        const plain = middles(periodicSpline(list, { x: 0, y: 0 }));
        middles(periodicSpline(turned, { x: 0, y: 0 })).forEach(({ x, y }, k) => {
          expect(distance({ x: y, y: -x }, plain[k]!)).toBeLessThan(1e-8);
        });
      }),
    );
  });

  it('refuses two neighbours on one spot', () => {
    expect(() => splineThrough([points[0]!, points[0]!])).toThrow(/one spot/);
  });
});
