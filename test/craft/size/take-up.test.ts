import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { interlacing, mostHeight } from '#craft/size/take-up.ts';

const DEGREES = 180 / Math.PI;

/** Square cloth of threads of diameter 1 that stand `spacing` apart. */
function square(spacing: number) {
  const run = interlacing(spacing, 1, 2);
  if (!run) throw new Error(`jammed at ${spacing}`);
  return run;
}

describe('stiff round threads in plain weave: F. T. Peirce, J. Text. Inst. 28 (1937)', () => {
  test('packed full they stand sqrt(3) diameters apart at 60 degrees, with a crimp of 20.919958 % (GATE 2009: 21 %)', () => {
    const full = square(Math.sqrt(3));
    expect(full.angle * DEGREES).toBeCloseTo(60, 5);
    expect(full.crimp).toBeCloseTo(0.209_199_58, 7);
    expect(Math.round(100 * full.crimp)).toBe(21);
    expect(interlacing(1.73, 1, 2)).toBeNull();
  });

  test('two diameters apart the angle is that of the 3-4-5 triangle', () => {
    expect(square(2).angle).toBeCloseTo(Math.atan(3 / 4), 14);
  });

  // Solved with mpmath from Peirce's two equations.
  test.each([
    [2, 0.14350111],
    [2.5, 0.08647716],
    [3, 0.05847568],
    [4, 0.03212081],
    [5, 0.02034776],
    [6, 0.01405438],
    [8, 0.00786419],
    [10, 0.00502105],
  ])('%d diameters apart: crimp %d', (spacing, crimp) => {
    expect(Math.abs(square(spacing).crimp - crimp)).toBeLessThan(6e-9);
  });

  test('the rules of thumb h = 4/3 p sqrt(c) and 1.36 p sqrt(c) are not what is used', () => {
    // They hold near two and two and a half diameters; at ten both miss the crimp by a tenth.
    const coefficient = (spacing: number): number => 1 / (spacing * Math.sqrt(square(spacing).crimp));
    expect(coefficient(2)).toBeCloseTo(1.32, 2);
    expect(coefficient(2.5)).toBeCloseTo(1.36, 2);
    expect((1.36 / coefficient(10)) ** -2 - 1).toBeGreaterThan(0.05);
    expect((4 / 3 / coefficient(10)) ** -2 - 1).toBeGreaterThan(0.1);
    expect(coefficient(1000)).toBeCloseTo(Math.SQRT2, 3);
  });

  test('both of his equations hold (seed 12)', () => {
    const share = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 50, noNaN: true }), share, (spacing, of) => {
        const height = of * mostHeight(spacing, 1);
        const run = interlacing(spacing, height, 1);
        if (!run) throw new Error('jammed');
        const straight = run.length - run.angle;
        expect(straight).toBeGreaterThanOrEqual(-1e-12);
        const { sin, cos } = Math;
        expect(straight * cos(run.angle) + sin(run.angle)).toBeCloseTo(spacing, 9);
        expect(straight * sin(run.angle) + 1 - cos(run.angle)).toBeCloseTo(height, 7);
        expect(run.crimp).toBeGreaterThanOrEqual(-1e-15);
      }),
      { seed: 12, numRuns: 500 },
    );
  });

  test('packed full, the whole length lies on the crossed threads: l = D t', () => {
    for (const spacing of [0.3, 0.6, 0.9]) {
      const run = interlacing(spacing, mostHeight(spacing, 1), 1)!;
      expect(run.angle).toBeCloseTo(Math.asin(spacing), 6);
      expect(run.length).toBeCloseTo(run.angle, 6);
    }
  });
});
