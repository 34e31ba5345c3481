import { Bezier } from 'bezier-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ArcLength } from '#base/geometry/arc-length.ts';
import { cubicMotion } from '#base/geometry/cubic-chain.ts';
import { type Cubic, ellipsePerimeter } from '#base/geometry/curve.ts';
import { curvature, leftOf, type Motion } from '#base/geometry/motion.ts';
import { besideCurve, speedBeside } from '#base/geometry/offset.ts';
import { cross, type Point } from '#base/geometry/point.ts';

/** Clockwise on the sheet, so that the outside lies to the left. */
const ellipse =
  (p: number, q: number) =>
  (t: number): Motion => ({
    place: { x: p * Math.cos(t), y: q * Math.sin(t) },
    velocity: { x: -p * Math.sin(t), y: q * Math.cos(t) },
    acceleration: { x: -p * Math.cos(t), y: -q * Math.sin(t) },
  });

const area = (outline: readonly Point[]): number =>
  outline.reduce((sum, point, k) => sum + cross(point, outline[(k + 1) % outline.length]!), 0) / 2;

describe('parallels of a convex curve', () => {
  // Steiner's formulas for convex outlines: length L + 2 pi d, area A + L d + pi d^2.
  it.each([0.1, 1, 3])('follow the formulas of Steiner at a distance of %d', (d) => {
    const motionAt = ellipse(2, 1);
    const parallel = new ArcLength((t) => speedBeside(motionAt(t), d), 0, 2 * Math.PI, 32);
    expect(parallel.total).toBeCloseTo(9.68844822 + 2 * Math.PI * d, 8);
    const outline = Array.from({ length: 20_000 }, (_, k) =>
      besideCurve(motionAt((k * Math.PI) / 10_000), d),
    );
    expect(area(outline)).toBeCloseTo(2 * Math.PI + ellipsePerimeter(2, 1) * d + Math.PI * d * d, 5);
  });

  it('run inside as well, as long as no bend is tighter', () => {
    const motionAt = ellipse(2, 1);
    const inside = new ArcLength((t) => speedBeside(motionAt(t), -0.4), 0, 2 * Math.PI, 32);
    expect(inside.total).toBeCloseTo(9.68844822 - 0.8 * Math.PI, 8);
  });
});

it('bend and side agree with the npm package bezier-js', () => {
  const coordinate = fc.integer({ min: -100, max: 100 });
  fc.assert(
    fc.property(
      fc.array(coordinate, { minLength: 8, maxLength: 8 }),
      fc.double({ min: 0.05, max: 0.95, noNaN: true }),
      (v, t) => {
        const cubic = [0, 2, 4, 6].map((k) => ({ x: v[k]!, y: v[k + 1]! })) as unknown as Cubic;
        const motion = cubicMotion(cubic, t);
        fc.pre(Math.hypot(motion.velocity.x, motion.velocity.y) > 1);
        const other = new Bezier(...(v as [number, number, number, number, number, number, number, number]));
        const derivative = other.derivative(t);
        expect(motion.velocity.x).toBeCloseTo(derivative.x, 8);
        expect(motion.velocity.y).toBeCloseTo(derivative.y, 8);
        expect(curvature(motion)).toBeCloseTo(other.curvature(t).k, 8);
        const normal = other.normal(t);
        expect(leftOf(motion).x).toBeCloseTo(-normal.x, 8);
        expect(leftOf(motion).y).toBeCloseTo(-normal.y, 8);
      },
    ),
  );
});
