import { describe, expect, test } from 'vitest';
import { seededRandom } from '#base/random.ts';
import { judgeCard } from '#craft/light/judge.ts';
import { aspectOf, directionOf, leanOf, onSheet, relativeTo } from '#craft/light/shape.ts';
import { leanInWords } from '#jobs/words/light.ts';
import { photographCard } from '../../support/card/index.ts';
import { fine } from '../../support/patterns/index.ts';

describe('a needle that leans', () => {
  const { pins } = fine({ repeats: 1, seed: 3 }).pattern;
  const view = { width: 2048, height: 1536, turn: 10, tilt: 4, thickness: 0.4 } as const;
  const none = { missing: 0, offCentre: 0, oval: 0, extra: 0 };

  test.each([false, true])(
    'along the lower edge, to the right, is told as that (turned over: %s)',
    (mirrored) => {
      const options = { ...view, mirrored, faults: none, leanBelow: 15 };
      const photo = photographCard(pins, options, seededRandom(2));
      const result = judgeCard(photo.picture, pins, { cardThickness: 0.4 });
      if (!result.ok) throw new Error(JSON.stringify(result.trouble));
      const below = result.value.zones.filter(({ down }) => down === 'bottom');
      expect(below.length).toBeGreaterThanOrEqual(2);
      for (const zone of below) {
        expect(Math.abs(zone.angle)).toBeLessThan(15);
        expect(zone.towards!.x).toBeGreaterThan(0.9);
        expect(zone.lean!).toBeGreaterThan(8);
        expect(zone.lean!).toBeLessThan(20);
      }
      const middle = below.find(({ across }) => across === 'middle');
      if (middle)
        expect(leanInWords(middle)).toMatch(/^Along the lower edge you lean about 1\d degrees to the right/u);
      expect(result.value.zones.filter(({ down }) => down === 'top')).toEqual([]);
    },
  );

  test('an upright one leaves no zone to speak of', () => {
    const photo = photographCard(pins, { ...view, faults: none, tilt: 12 }, seededRandom(3));
    const result = judgeCard(photo.picture, pins, { cardThickness: 0.4 });
    expect(result.ok && result.value.zones).toEqual([]);
  });

  test('the lean is the one whose smear is the thickness times its tangent (common practice, no source)', () => {
    const [diameter, thickness, angle] = [0.5, 0.4, 12];
    const aspect = 1 + (thickness * Math.tan((angle * Math.PI) / 180)) / diameter;
    expect(leanOf(diameter * Math.sqrt(aspect), aspect, thickness)).toBeCloseTo(angle, 9);
  });
});

describe('shapes as second moments', () => {
  test('know their aspect and direction', () => {
    const [cos, sin] = [Math.cos(0.4), Math.sin(0.4)];
    const shape = { xx: 9 * cos * cos + 4 * sin * sin, xy: 5 * cos * sin, yy: 9 * sin * sin + 4 * cos * cos };
    expect(aspectOf(shape)).toBeCloseTo(1.5, 12);
    expect(directionOf(shape)).toBeCloseTo(0.4, 12);
  });

  test('are the same on the sheet however the picture stretches it', () => {
    const shape = { xx: 3, xy: 0.7, yy: 2 };
    const [a, b, c, d] = [11, -2, 1.5, 8];
    const seen = {
      xx: a * a * shape.xx + 2 * a * b * shape.xy + b * b * shape.yy,
      xy: a * c * shape.xx + (a * d + b * c) * shape.xy + b * d * shape.yy,
      yy: c * c * shape.xx + 2 * c * d * shape.xy + d * d * shape.yy,
    };
    const back = onSheet(seen, [a, b, c, d]);
    for (const key of ['xx', 'xy', 'yy'] as const) expect(back[key]).toBeCloseTo(shape[key], 10);
  });

  test('beside their own kind are round', () => {
    const usual = { xx: 2, xy: 0.3, yy: 1 };
    const scaled = { xx: 6, xy: 0.9, yy: 3 };
    expect(aspectOf(relativeTo(scaled, usual))).toBeCloseTo(1, 10);
  });
});
