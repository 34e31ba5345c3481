import { describe, expect, it } from 'vitest';
import { compose, rotation, scaling } from '#base/geometry/affine.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import {
  distort,
  drawPins,
  edging,
  fine,
  jitter,
  type KnownPattern,
  omit,
  place,
  round,
  tape,
} from './index.ts';

const patterns: Record<string, () => KnownPattern> = {
  edging: () => edging(),
  'edging at 52 degrees': () => edging({ angle: 52, length: 8, width: 12 }),
  fine: () => fine(),
  'fine at 66 degrees': () => fine({ angle: 66, seed: 5 }),
  tape: () => tape(),
  round: () => round(),
};

describe.each(Object.entries(patterns))('the generated pattern %s', (_, make) => {
  const known = make();

  it('has pins that are all apart, each with its truth', () => {
    const { pins } = known.pattern;
    expect(pins.length).toBeGreaterThan(200);
    expect(known.ideal).toHaveLength(pins.length);
    expect(known.roles).toHaveLength(pins.length);
    expect(closest(pins)).toBeGreaterThan(0.5);
    expect(new Set(pins.map((pin) => pin.id)).size).toBe(pins.length);
  });

  it('anchors its marks and runs at pins that exist, also after some are left out', () => {
    const random = seededRandom(7);
    const less = omit(known, drawPins(known, 5, random));
    for (const { pattern } of [known, less]) {
      const ids = new Set(pattern.pins.map((pin) => pin.id));
      expect([...anchoredPins(pattern)].filter((id) => !ids.has(id))).toEqual([]);
    }
    expect(less.pattern.pins).toHaveLength(known.pattern.pins.length - 5);
    expect(less.omitted).toHaveLength(5);
  });

  it('keeps its truth when jittered or distorted, and moves it when placed', () => {
    const shaken = jitter(known, 0.15, seededRandom(3));
    expect(shaken.ideal).toEqual(known.ideal);
    expect(rms(shaken.pattern.pins, shaken.ideal)).toBeCloseTo(0.15 * Math.SQRT2, 1);
    expect(distort(known, scaling(1.01, 0.99)).ideal).toEqual(known.ideal);
    const placed = place(known, compose(rotation(0.3), scaling(1.2)));
    expect(rms(placed.pattern.pins, placed.ideal)).toBe(0);
  });

  it('comes out the same every time', () => {
    expect(make()).toEqual(known);
  });
});

function closest(points: readonly Point[]): number {
  let least = Infinity;
  points.forEach((a, i) => {
    for (let j = 0; j < i; j++) least = Math.min(least, distance(a, points[j]!));
  });
  return least;
}

const rms = (a: readonly Point[], b: readonly Point[]): number =>
  Math.sqrt(a.reduce((sum, point, k) => sum + distance(point, b[k]!) ** 2, 0) / a.length);

function* anchoredPins(pattern: KnownPattern['pattern']): Generator<string> {
  for (const run of pattern.runs) yield* run.pins;
  for (const mark of pattern.marks) {
    const anchors = 'path' in mark ? mark.path : 'from' in mark ? [mark.from, mark.to] : [mark.at];
    for (const anchor of anchors) if ('pin' in anchor) yield anchor.pin;
  }
  for (const area of pattern.areas) for (const anchor of area.outline) if ('pin' in anchor) yield anchor.pin;
}
