import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closedSpline } from '#base/geometry/closed-spline.ts';
import { cubicLength, cubicPoint } from '#base/geometry/curve.ts';
import { distance, subtract, unit } from '#base/geometry/point.ts';

const knots = fc
  .array(fc.tuple(fc.double({ min: 4, max: 20, noNaN: true }), fc.boolean()), { minLength: 3, maxLength: 12 })
  .map((radii) =>
    radii.map(([radius, sharp], k) => {
      const angle = (2 * Math.PI * k) / radii.length;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), ...(sharp && { sharp }) };
    }),
  );

describe('a closed spline', () => {
  it('passes through every knot, hangs together, and has a part from each sharp knot to the next', () => {
    fc.assert(
      fc.property(knots, (points) => {
        const parts = closedSpline(points);
        expect(parts).toHaveLength(Math.max(1, points.filter(({ sharp }) => sharp).length));
        const cubics = parts.flat();
        expect(cubics).toHaveLength(points.length);
        const first = Math.max(
          0,
          points.findIndex(({ sharp }) => sharp),
        );
        for (const [k, cubic] of cubics.entries()) {
          expect(distance(cubicPoint(cubic, 0), points[(first + k) % points.length]!)).toBeLessThan(1e-12);
          expect(distance(cubicPoint(cubic, 1), cubics[(k + 1) % cubics.length]![0])).toBeLessThan(1e-12);
        }
      }),
    );
  });

  it('has no corner but at sharp knots', () => {
    fc.assert(
      fc.property(knots, (points) => {
        for (const part of closedSpline(points)) {
          for (const [k, [, , coming, to]] of part.entries()) {
            const next = part[k + 1];
            if (next === undefined) continue;
            const [one, other] = [unit(subtract(to, coming)), unit(subtract(next[1], next[0]))];
            expect(distance(one, other)).toBeLessThan(1e-9);
          }
        }
      }),
    );
  });

  it('runs straight between sharp neighbours', () => {
    const square = [
      { x: 0, y: 0, sharp: true },
      { x: 10, y: 0, sharp: true },
      { x: 10, y: 10, sharp: true },
      { x: 0, y: 10, sharp: true },
    ];
    const parts = closedSpline(square);
    expect(parts.map(([side]) => cubicLength(side!))).toEqual(
      [10, 10, 10, 10].map((side) => expect.closeTo(side, 9)),
    );
  });

  it('comes near a circle through knots of one: its length is 2 pi r within a thousandth', () => {
    // Circumference of the circle; the spline is not one, but a lacemaker must not see the difference.
    const circle = Array.from({ length: 16 }, (_, k) => ({
      x: 10 * Math.cos((k * Math.PI) / 8),
      y: 10 * Math.sin((k * Math.PI) / 8),
    }));
    const length = closedSpline(circle)
      .flat()
      .reduce((sum, cubic) => sum + cubicLength(cubic), 0);
    expect(Math.abs(length / (20 * Math.PI) - 1)).toBeLessThan(1e-3);
  });

  it('refuses fewer than three knots', () => {
    expect(() => closedSpline([{ x: 0, y: 0 }])).toThrow(RangeError);
  });
});
