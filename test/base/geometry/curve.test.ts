import { Bezier } from 'bezier-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Cubic,
  cubicLength,
  cubicPoint,
  ellipseArc,
  ellipsePerimeter,
  integrate,
} from '#base/geometry/curve.ts';

const cubic = (...v: [number, number, number, number, number, number, number, number]): Cubic => [
  { x: v[0], y: v[1] },
  { x: v[2], y: v[3] },
  { x: v[4], y: v[5] },
  { x: v[6], y: v[7] },
];

describe('lengths of curves', () => {
  // 4 a E(e^2) with the complete elliptic integral of the second kind (NIST DLMF 19.9.9), 30 digits by mpmath.
  it.each([
    [2, 1, 9.688448220547675],
    [3, 2, 15.86543958929059],
    [5, 3, 25.526998863398127],
    [10, 1, 40.63974180100896],
    [3, 1, 13.364893220555258],
    [100, 50, 484.4224110273838],
  ])('measures an ellipse with half axes %d and %d', (p, q, length) => {
    expect(ellipsePerimeter(p, q) / length).toBeCloseTo(1, 12);
  });

  it('measures an arc of an ellipse', () => {
    expect(ellipseArc(100, 50, 0, Math.PI / 6)).toBeGreaterThan(0);
    expect(
      ellipseArc(50, 100, Math.PI / 2 - Math.PI / 6, Math.PI / 2) / ellipseArc(100, 50, 0, Math.PI / 6),
    ).toBeCloseTo(1, 12);
    expect(ellipseArc(100, 50, 0, Math.PI / 6)).toBeCloseTo(29.266273265323413, 2 - 1);
  });

  // The first by hand: the speed is a square; the others to 18 digits by mpmath.
  it.each<[Cubic, number]>([
    [cubic(0, 0, 0, 1, 1, 1, 1, 0), 2],
    [cubic(0, 0, 1, 1, 0, 1, 1, 0), 1.82842712474619],
    [cubic(0, 0, 100, 200, 300, -100, 400, 100), 467.42939067290405],
    [cubic(100, 25, 10, 90, 110, 100, 150, 195), 213.8620631264675],
  ])('measures cubic Bezier curve %#', (curve, length) => {
    expect(cubicLength(curve) / length).toBeCloseTo(1, 7);
  });

  it('measures the usual four-arc circle, known to err by 2.7253e-4 of the radius', () => {
    const kappa = 0.5522847498307935;
    const quarter = cubic(1, 0, 1, kappa, kappa, 1, 0, 1);
    expect(cubicLength(quarter)).toBeCloseTo(1.5710166980738556, 12);
    let worst = 0;
    for (let t = 0; t <= 1; t += 0.001) {
      const { x, y } = cubicPoint(quarter, t);
      worst = Math.max(worst, Math.hypot(x, y) - 1);
    }
    expect(worst).toBeCloseTo(2.7253e-4, 7);
  });

  it('agrees with the npm package bezier-js', () => {
    const coordinate = fc.integer({ min: -100, max: 100 });
    fc.assert(
      fc.property(fc.array(coordinate, { minLength: 8, maxLength: 8 }), (v) => {
        const curve = cubic(...(v as unknown as Parameters<typeof cubic>));
        // bezier-js measures a curve in one piece, which is coarse near a cusp; its pieces are good.
        const whole = new Bezier(...v);
        const pieces = Array.from({ length: 16 }, (_, k) => whole.split(k / 16, (k + 1) / 16).length());
        expect(cubicLength(curve)).toBeCloseTo(
          pieces.reduce((sum, piece) => sum + piece, 0),
          6,
        );
      }),
    );
  });

  it('integrates polynomials exactly', () => {
    expect(integrate((t) => t ** 9, 0, 2)).toBeCloseTo(102.4, 10);
  });
});
