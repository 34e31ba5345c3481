import fc from 'fast-check';
import { expect, test } from 'vitest';
import { distance } from '#base/geometry/point.ts';
import { distanceToInk } from '#paper/drawing/distance.ts';
import type { InkMark, Stroke } from '#paper/drawing/mark.ts';
import { rectangle, segment, smoothCurve } from '#paper/drawing/path.ts';

const ink = { role: 'marking', colour: '#000000' } as const;
const place = fc.record({
  x: fc.double({ min: -50, max: 50, noNaN: true }),
  y: fc.double({ min: -50, max: 50, noNaN: true }),
});

test('from a line, its thickness counts, and its ends are round', () => {
  const line: Stroke = { ...ink, kind: 'stroke', path: segment({ x: 0, y: 0 }, { x: 10, y: 0 }), width: 1 };
  expect(distanceToInk(line, { x: 5, y: 3 })).toBeCloseTo(2.5, 12);
  expect(distanceToInk(line, { x: 5, y: 0.4 })).toBe(0);
  expect(distanceToInk(line, { x: 13, y: 4 })).toBeCloseTo(4.5, 12);
});

test('from a curve, no further than from the nearest of the points that it goes through', () => {
  fc.assert(
    fc.property(
      fc.array(place, { minLength: 3, maxLength: 8 }),
      place,
      fc.boolean(),
      (points, at, closed) => {
        const curve: Stroke = { ...ink, kind: 'stroke', path: smoothCurve(points, closed), width: 0 };
        expect(distanceToInk(curve, at)).toBeLessThanOrEqual(
          Math.min(...points.map((point) => distance(at, point))) + 1e-9,
        );
      },
    ),
  );
});

test('inside of a filled shape and of words it is nought, and to a ring it is measured from its line', () => {
  const box = { left: 0, top: 0, right: 4, bottom: 2 };
  const fill: InkMark = { ...ink, kind: 'fill', path: rectangle(box) };
  expect(distanceToInk(fill, { x: 1, y: 1 })).toBe(0);
  expect(distanceToInk(fill, { x: 7, y: 6 })).toBeCloseTo(5, 12);
  const words: InkMark = {
    ...ink,
    kind: 'text',
    at: { x: 0, y: 0 },
    text: 'foot',
    size: 3,
    width: 8,
    weight: 'regular',
    align: 'left',
    turn: 0,
  };
  expect(distanceToInk(words, { x: 4, y: -1 })).toBe(0);
  expect(distanceToInk(words, { x: 10, y: -1 })).toBeCloseTo(2, 12);
  const ring: InkMark = { ...ink, kind: 'ring', at: { x: 0, y: 0 }, diameter: 5, width: 1 };
  expect(distanceToInk(ring, { x: 0, y: 0 })).toBeGreaterThan(1.49);
  expect(distanceToInk(ring, { x: 2, y: 0 })).toBe(0);
});
