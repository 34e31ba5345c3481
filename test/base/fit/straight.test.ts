import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alongLine, fitStraight, lieStraight, offLine } from '#base/fit/straight.ts';
import { applyAffine, compose, rotation, translation } from '#base/geometry/affine.ts';
import { distance, length } from '#base/geometry/point.ts';

// The data of K. Pearson, "On lines and planes of closest fit", Philosophical Magazine 2 (1901) 559-572.
const pearson = [
  { x: 0, y: 5.9 },
  { x: 0.9, y: 5.4 },
  { x: 1.8, y: 4.4 },
  { x: 2.6, y: 4.6 },
  { x: 3.3, y: 3.5 },
  { x: 4.4, y: 3.7 },
  { x: 5.2, y: 2.8 },
  { x: 6.1, y: 2.8 },
  { x: 6.5, y: 2.4 },
  { x: 7.4, y: 1.5 },
];

describe('the line nearest to points', () => {
  // Slope, intercept and sum of squares as scipy.odr and R's prcomp give them.
  it('is that of Pearson for his data', () => {
    const line = fitStraight(pearson);
    const slope = line.direction.y / line.direction.x;
    expect(slope).toBeCloseTo(-0.545561197521, 10);
    expect(line.through.y - slope * line.through.x).toBeCloseTo(5.78404377453, 9);
    const squares = pearson.reduce((sum, point) => sum + offLine(line, point) ** 2, 0);
    expect(squares).toBeCloseTo(0.618572759437, 10);
  });

  it('turns with the points, and runs from the first to the last', () => {
    fc.assert(
      fc.property(fc.double({ min: -10, max: 10, noNaN: true }), (angle) => {
        const map = compose(translation(3, -8), rotation(angle));
        const turned = pearson.map((point) => applyAffine(map, point));
        const line = fitStraight(turned);
        expect(length(line.direction)).toBeCloseTo(1, 12);
        expect(alongLine(line, turned.at(-1)!)).toBeGreaterThan(alongLine(line, turned[0]!));
        const squares = turned.reduce((sum, point) => sum + offLine(line, point) ** 2, 0);
        expect(squares).toBeCloseTo(0.618572759437, 9);
      }),
    );
  });

  it('takes every point apart into along and off', () => {
    const line = fitStraight(pearson);
    for (const point of pearson) {
      const away = Math.hypot(alongLine(line, point), offLine(line, point));
      expect(away).toBeCloseTo(distance(line.through, point), 12);
    }
  });

  it('of one point passes through it, and of none is refused', () => {
    expect(offLine(fitStraight([{ x: 4, y: 7 }]), { x: 4, y: 7 })).toBe(0);
    expect(() => fitStraight([])).toThrow('no points');
  });

  it('tells straight from bent', () => {
    expect(lieStraight(pearson, 0.5)).toBe(true);
    expect(lieStraight(pearson, 0.3)).toBe(false);
  });
});
