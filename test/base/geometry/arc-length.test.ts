import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ArcLength } from '#base/geometry/arc-length.ts';
import { cubicChain } from '#base/geometry/cubic-chain.ts';
import { type Cubic, ellipsePerimeter } from '#base/geometry/curve.ts';
import { length } from '#base/geometry/point.ts';

const total = (speed: (t: number) => number, from: number, to: number): number =>
  new ArcLength(speed, from, to, 32).total;

describe('lengths of known curves', () => {
  // The first to fourth and the last to 18 digits by mpmath; cardioid and astroid are textbook integrals.
  it.each([
    ['parabola y = x^2, 0 to 1', (t: number) => Math.hypot(1, 2 * t), 0, 1, 1.4789428575445973],
    ['catenary y = cosh x, 0 to 1: sinh 1', (t: number) => Math.cosh(t), 0, 1, 1.1752011936438014],
    ['spiral r = t, one turn', (t: number) => Math.hypot(1, t), 0, 2 * Math.PI, 21.256294148209097],
    ['sine arch', (t: number) => Math.hypot(1, Math.cos(t)), 0, 2 * Math.PI, 7.640395578055424],
    ['cardioid', (t: number) => 2 * Math.abs(Math.cos(t / 2)), -Math.PI, Math.PI, 8],
    ['astroid', (t: number) => 1.5 * Math.abs(Math.sin(2 * t)), 0, 2 * Math.PI, 6],
    ['lemniscate', (t: number) => 1 / Math.sqrt(1 + Math.sin(t) ** 2), 0, 2 * Math.PI, 5.244115108584239],
  ])('%s', (_, speed, from, to, known) => {
    expect(total(speed, from, to) / known).toBeCloseTo(1, 13);
  });

  // The first by hand; the others by mpmath.
  it.each<[readonly number[], number]>([
    [[0, 0, 0, 1, 1, 1, 1, 0], 2],
    [[100, 25, 10, 90, 110, 100, 150, 195], 213.8620631264675],
    [[1, 0, 1, 0.5522847498307935, 0.5522847498307935, 1, 0, 1], 1.5710166980738556],
  ])('cubic Bezier curve %#', (v, known) => {
    const cubic = [0, 2, 4, 6].map((k) => ({ x: v[k]!, y: v[k + 1]! })) as unknown as Cubic;
    const { motionAt } = cubicChain([cubic]);
    expect(total((t) => length(motionAt(t).velocity), 0, 1) / known).toBeCloseTo(1, 12);
  });
});

describe('from length to parameter and back', () => {
  const ellipse = (t: number): number => Math.hypot(20 * Math.sin(t), 3 * Math.cos(t));
  const along = new ArcLength(ellipse, 0, 2 * Math.PI, 16);

  it('is the same parameter', () => {
    expect(along.total / ellipsePerimeter(20, 3)).toBeCloseTo(1, 12);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (t) => {
        expect(along.parameterAt(along.lengthTo(t))).toBeCloseTo(t, 9);
      }),
    );
  });

  it('holds at both ends and where the place stands still', () => {
    expect(along.parameterAt(0)).toBe(0);
    expect(along.parameterAt(along.total)).toBeCloseTo(2 * Math.PI, 12);
    const cusp = new ArcLength((t) => 2 * Math.abs(t), -1, 1, 2);
    expect(cusp.parameterAt(1)).toBeCloseTo(0, 6);
    expect(cusp.parameterAt(1.25)).toBeCloseTo(0.5, 9);
  });
});
