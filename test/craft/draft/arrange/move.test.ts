import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance } from '#base/geometry/point.ts';
import { mirrorPattern, shiftPattern, turnPattern } from '#craft/draft/arrange/index.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { scalePattern } from '#pattern/scale.ts';
import { arbitraryPattern } from '../../../support/arbitrary-pattern.ts';
import { deepFreeze } from '../../../support/change-laws.ts';
import { edging } from '../../../support/patterns/index.ts';
import { expectSame, meaning, placesOf } from './laws.ts';

/** Patterns with all kinds of record, within a metre or so of the origin. */
const patterns = arbitraryPattern({ fine: true }).map((pattern) => {
  const small = scalePattern(pattern, 0.01, { thickness: true });
  return deepFreeze({
    ...small,
    ...(small.repeat && { repeat: { step: { x: 5, y: small.repeat.step.y } } }),
  });
});
const place = fc.record({
  x: fc.double({ min: -500, max: 500, noNaN: true }),
  y: fc.double({ min: -500, max: 500, noNaN: true }),
});
const angle = fc.double({ min: -10, max: 10, noNaN: true });
const line = fc.record({
  through: place,
  direction: angle.map((at) => ({ x: 3 * Math.cos(at), y: 3 * Math.sin(at) })),
});

describe('mirror', () => {
  test('twice in one line is as before', () =>
    fc.assert(
      fc.property(patterns, line, (pattern, mirror) =>
        expectSame(pattern, mirrorPattern(mirrorPattern(pattern, mirror), mirror), 1e-9),
      ),
    ));

  test('leaves places on the line, keeps distances, and turns the sides of picots round', () => {
    const { pattern } = edging();
    const upright = { through: { x: 10, y: 0 }, direction: { x: 0, y: -2 } };
    const seen = mirrorPattern(
      { ...pattern, marks: [{ kind: 'picot', id: 'x', at: { x: 10, y: 3 }, side: 'left' }] },
      upright,
    );
    seen.pins.forEach(({ x, y }, at) => {
      expect(x).toBeCloseTo(20 - pattern.pins[at]!.x, 9);
      expect(y).toBe(pattern.pins[at]!.y);
    });
    expect(seen.marks).toEqual([{ kind: 'picot', id: 'x', at: { x: 10, y: 3 }, side: 'right' }]);
  });

  test('in two lines is a turn by twice the angle between them', () =>
    fc.assert(
      fc.property(patterns, place, angle, angle, (pattern, through, first, second) => {
        const lineAt = (at: number) => ({ through, direction: { x: Math.cos(at), y: Math.sin(at) } });
        const twice = mirrorPattern(mirrorPattern(pattern, lineAt(first)), lineAt(second));
        expectSame(turnPattern(pattern, 2 * (second - first), through), twice, 1e-9);
      }),
    ));

  test('a line without a direction is refused', () =>
    expect(() =>
      mirrorPattern(edging().pattern, { through: { x: 0, y: 0 }, direction: { x: 0, y: 0 } }),
    ).toThrow('direction'));
});

describe('turn', () => {
  test('by a whole turn is as before, and turns add up', () =>
    fc.assert(
      fc.property(patterns, angle, angle, place, (pattern, one, other, about) => {
        expectSame(pattern, turnPattern(pattern, 2 * Math.PI, about), 1e-9);
        const twice = turnPattern(turnPattern(pattern, one, about), other, about);
        expectSame(twice, turnPattern(pattern, one + other, about), 1e-9);
      }),
    ));

  test('by a quarter takes right to down, exactly', () => {
    const { pattern } = edging();
    const turned = turnPattern(pattern, Math.PI / 2, { x: 0, y: 0 });
    expect(turned.pins.every(({ x, y }, at) => x === -pattern.pins[at]!.y && y === pattern.pins[at]!.x)).toBe(
      true,
    );
  });

  test('keeps every distance', () =>
    fc.assert(
      fc.property(patterns, angle, place, (pattern, by, about) => {
        const turned = turnPattern(pattern, by, about);
        const [first, ...others] = pattern.pins;
        const [start, ...ends] = turned.pins;
        others.forEach((pin, at) => {
          expect(distance(start!, ends[at]!)).toBeCloseTo(distance(first!, pin), 9);
        });
      }),
    ));
});

describe('scale', () => {
  test('by k and by 1/k is as before', () =>
    fc.assert(
      fc.property(
        patterns,
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        fc.boolean(),
        (pattern, factor, thickness) => {
          // A recipe may leave its range on the way: scale.test.ts sees to recipes.
          const { recipe: _, ...alone } = pattern;
          const back = scalePattern(scalePattern(alone, factor, { thickness }), 1 / factor, { thickness });
          expectSame(alone, back, 1e-9);
          expectNumbers(alone, back);
        },
      ),
    ));

  const thick: Pattern = {
    ...edging().pattern,
    pins: [{ id: 'a', x: 1, y: 2, diameter: 0.6 }],
    runs: [],
    areas: [],
    marks: [
      { id: 't', kind: 'text', at: { x: 0, y: 1 }, text: 'A', height: 3 },
      {
        id: 'g',
        kind: 'gimp',
        path: [
          { x: 0, y: 1 },
          { x: 2, y: 2 },
        ],
        closed: false,
        width: 0.4,
      },
    ],
    sizes: { pin: 0.5, hole: 0.45, footsideSpacing: 5, cardThickness: 0.4 },
    scale: { from: 'span', dpi: 300, length: 50 },
    sheet: { width: 100, height: 200 },
  };

  test('pins and gimps stay as thick as they are', () =>
    expect(scalePattern(thick, 2)).toMatchObject({
      pins: [{ x: 2, y: 4, diameter: 0.6 }],
      marks: [
        { height: 6 },
        {
          width: 0.4,
          path: [
            { x: 0, y: 2 },
            { x: 4, y: 4 },
          ],
        },
      ],
      sizes: { pin: 0.5, hole: 0.45, footsideSpacing: 10, cardThickness: 0.4 },
      scale: { dpi: 150, length: 100 },
      sheet: { width: 200, height: 400 },
    }));

  test('unless they are to grow, as on a copier', () =>
    expect(scalePattern(thick, 2, { thickness: true })).toMatchObject({
      pins: [{ diameter: 1.2 }],
      marks: [{ height: 6 }, { width: 0.8 }],
      sizes: { pin: 1, hole: 0.9, footsideSpacing: 10, cardThickness: 0.4 },
    }));

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('by %d is refused', (factor) =>
    expect(() => scalePattern(thick, factor)).toThrow('factor'),
  );
});

test('a shift moves all by one step', () =>
  fc.assert(
    fc.property(patterns, place, (pattern, step) => {
      const shifted = shiftPattern(pattern, step);
      expect(meaning(shifted)).toEqual(meaning(pattern));
      const back = shiftPattern(shifted, { x: -step.x, y: -step.y });
      expect(placesOf(back).length).toBe(placesOf(pattern).length);
      expectSame(pattern, back, 1e-9);
    }),
  ));

/** Every number of two plain values is the same within a billionth of it. */
function expectNumbers(one: unknown, other: unknown): void {
  if (typeof one === 'number') {
    expect(Math.abs(one - (other as number))).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(one)));
  } else if (typeof one === 'object' && one !== null) {
    for (const [key, value] of Object.entries(one))
      expectNumbers(value, (other as Record<string, unknown>)[key]);
  }
}
