import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingsAmong, sampled } from '#base/geometry/crossings.ts';
import { cubicChain } from '#base/geometry/cubic-chain.ts';
import type { ParametricCurve } from '#base/geometry/motion.ts';
import { cross, type Point, subtract } from '#base/geometry/point.ts';
import { splineThrough } from '#base/geometry/spline.ts';

/** Lissajous' curve (sin 2t, sin 3t) on [0, 2 pi), which crosses itself 2 * 2 * 3 - 2 - 3 = 7 times. */
const lissajous: ParametricCurve = {
  spans: 1,
  motionAt: (share) => {
    const t = 2 * Math.PI * share + 0.1;
    const w = 2 * Math.PI;
    return {
      place: { x: Math.sin(2 * t), y: Math.sin(3 * t) },
      velocity: { x: 2 * w * Math.cos(2 * t), y: 3 * w * Math.cos(3 * t) },
      acceleration: { x: -4 * w * w * Math.sin(2 * t), y: -9 * w * w * Math.sin(3 * t) },
    };
  },
};

/** The lemniscate of Gerono, an eight that crosses itself at the origin at right angles. */
const eight: ParametricCurve = {
  spans: 1,
  motionAt: (share) => {
    const w = 2 * Math.PI;
    const t = w * share + 1;
    return {
      place: { x: Math.cos(t), y: Math.sin(t) * Math.cos(t) },
      velocity: { x: -w * Math.sin(t), y: w * Math.cos(2 * t) },
      acceleration: { x: -w * w * Math.cos(t), y: -2 * w * w * Math.sin(2 * t) },
    };
  },
};

describe('crossings', () => {
  it('of an eight: one, at its middle, at a right angle', () => {
    const [found, ...others] = crossingsAmong([sampled(eight, true, 101)]);
    expect(others).toEqual([]);
    expect(Math.hypot(found!.place.x, found!.place.y)).toBeLessThan(1e-9);
    expect(found!.angle).toBeCloseTo(Math.PI / 2, 9);
    expect(found!.earlier.parameter).toBeLessThan(found!.later.parameter);
  });

  it('of a curve of Lissajous: seven', () => {
    expect(crossingsAmong([sampled(lissajous, true, 200)])).toHaveLength(7);
  });

  it('of a circle: none', () => {
    const circle: ParametricCurve = {
      spans: 1,
      motionAt: (t) => ({
        place: { x: Math.cos(7 * t), y: Math.sin(7 * t) },
        velocity: { x: -7 * Math.sin(7 * t), y: 7 * Math.cos(7 * t) },
        acceleration: { x: -49 * Math.cos(7 * t), y: -49 * Math.sin(7 * t) },
      }),
    };
    expect(crossingsAmong([sampled({ ...circle, spans: (2 * Math.PI) / 7 }, true, 60)])).toEqual([]);
    expect(crossingsAmong([])).toEqual([]);
  });

  it('of straight lines: those that crossing each by each finds', () => {
    const coordinate = fc.integer({ min: -1000, max: 1000 });
    const point = fc.record({ x: coordinate, y: coordinate });
    const segment = fc.tuple(point, point).filter(([a, b]) => a.x !== b.x || a.y !== b.y);
    fc.assert(
      fc.property(fc.array(segment, { maxLength: 12 }), (segments) => {
        const lines = segments.map((ends) => sampled(cubicChain(splineThrough(ends)), false, 7));
        const found = crossingsAmong(lines).map(({ earlier, later }) => [earlier.curve, later.curve]);
        const known = segments.flatMap((one, p) =>
          segments.slice(p + 1).flatMap((other, q) => (meet(one, other) ? [[p, p + 1 + q]] : [])),
        );
        // Lines that only touch, end to side or at one point, may be told either way.
        const sure = known.filter(([p, q]) => meet(segments[p!]!, segments[q!]!) === 'cross');
        for (const pair of sure) expect(found).toContainEqual(pair);
        for (const pair of found) expect(known).toContainEqual(pair);
      }),
    );
  });
});

type Ends = readonly [Point, Point];

function meet([a, b]: Ends, [c, d]: Ends): 'cross' | 'touch' | null {
  const turns = [
    cross(subtract(b, a), subtract(c, a)) * cross(subtract(b, a), subtract(d, a)),
    cross(subtract(d, c), subtract(a, c)) * cross(subtract(d, c), subtract(b, c)),
  ];
  if (turns.every((turn) => turn < 0)) return 'cross';
  return turns.every((turn) => turn <= 0) ? 'touch' : null;
}
