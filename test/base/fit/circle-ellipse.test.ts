import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { algebraicCircle, fitCircle } from '#base/fit/circle.ts';
import { fitEllipse } from '#base/fit/ellipse.ts';

/** W. Gander, G. H. Golub and R. Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994), 558-578. */
const six = [
  { x: 1, y: 7 },
  { x: 2, y: 6 },
  { x: 5, y: 8 },
  { x: 7, y: 7 },
  { x: 9, y: 5 },
  { x: 3, y: 7 },
];

describe('circles and ellipses (Gander, Golub & Strebel 1994)', () => {
  it('finds their circle of least distances', () => {
    const { centre, radius, squares } = fitCircle(six)!;
    expect(centre.x).toBeCloseTo(4.73978241, 6);
    expect(centre.y).toBeCloseTo(2.98353273, 6);
    expect(radius).toBeCloseTo(4.71422601, 6);
    expect(squares).toBeCloseTo(1.2275990782, 8);
  });

  it('finds the algebraic circle of Kasa for the same points', () => {
    // His normal equations solved in exact fractions.
    const { centre, radius } = algebraicCircle(six)!;
    expect(centre.x).toBeCloseTo(4.742331288343558, 10);
    expect(centre.y).toBeCloseTo(3.835122699386503, 10);
    expect(radius).toBeCloseTo(4.108761522345449, 10);
  });

  it('finds their ellipse of least distances', () => {
    const { centre, major, minor, squares } = fitEllipse([...six, { x: 6, y: 2 }, { x: 8, y: 4 }])!;
    expect(centre.x).toBeCloseTo(2.6996124, 4);
    expect(centre.y).toBeCloseTo(3.8159568, 4);
    expect(major).toBeCloseTo(6.5187221, 4);
    expect(minor).toBeCloseTo(3.031886, 4);
    expect(squares).toBeCloseTo(1.37330554, 6);
  });

  it('gives an exact circle back, wherever it lies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.double({ min: 0.5, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (x, r, turn) => {
          const points = [0, 0.4, 0.9, 1.7, 2.2].map((t) => ({
            x: x + r * Math.cos(t + turn),
            y: -x + r * Math.sin(t + turn),
          }));
          const { centre, radius } = fitCircle(points)!;
          expect(Math.hypot(centre.x - x, centre.y + x)).toBeLessThan(1e-6 * (r + Math.abs(x)));
          expect(Math.abs(radius - r)).toBeLessThan(1e-6 * (r + Math.abs(x)));
        },
      ),
    );
  });

  it('says no to points on one line', () => {
    expect(fitCircle([0, 1, 2, 3].map((x) => ({ x, y: 2 * x })))).toBeNull();
    expect(fitEllipse(six.slice(0, 4))).toBeNull();
  });
});
