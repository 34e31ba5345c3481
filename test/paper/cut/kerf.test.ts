import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holeSize } from '#paper/cut/hole-size.ts';
import { drawnForOpening, drawnForPiece, openingOf, pieceOf } from '#paper/cut/kerf.ts';

// Worked example of a laser-cutting service (snijlab.nl, page on kerf): kerf 0.2 mm, a rectangle drawn 2.0 x 4.0.
describe('the published example of a kerf of 0.2 mm', () => {
  test.each([
    [2, 2.2, 1.8],
    [4, 4.2, 3.8],
  ])('drawn %f: opening %f, piece %f', (drawn, opening, piece) => {
    expect(openingOf(drawn, 0.2)).toBeCloseTo(opening, 12);
    expect(pieceOf(drawn, 0.2)).toBeCloseTo(piece, 12);
  });

  test.each([
    [2, 1.8],
    [4, 3.8],
  ])('for an opening of %f draw %f', (wanted, drawn) =>
    expect(drawnForOpening(wanted, 0.2)).toBeCloseTo(drawn, 12),
  );
});

// Published by ponoko.com: a shape drawn 40 mm gives a square of 39.80 and a hole of 40.20.
test('the published example of 40 mm', () => {
  expect(pieceOf(40, 0.2)).toBeCloseTo(39.8, 12);
  expect(openingOf(40, 0.2)).toBeCloseTo(40.2, 12);
});

test('drawing and burning undo each other; what cannot be drawn is a point', () => {
  const mm = fc.double({ min: 0.01, max: 10, noNaN: true });
  fc.assert(
    fc.property(mm, fc.double({ min: 0, max: 2, noNaN: true }), (wanted, kerf) => {
      const drawn = drawnForOpening(wanted, kerf);
      expect(drawn).toBeGreaterThanOrEqual(0);
      if (wanted > kerf + 1e-6) expect(openingOf(drawn, kerf)).toBeCloseTo(wanted, 9);
      else expect(openingOf(drawn, kerf)).toBeGreaterThanOrEqual(wanted - 2e-6);
      expect(pieceOf(drawnForPiece(wanted, kerf), kerf)).toBeCloseTo(wanted, 9);
    }),
  );
  expect(drawnForOpening(0.3, 0.1 + 0.2)).toBe(0);
});

test('a hole is a little finer than its pin, unless it is given', () => {
  for (const pin of [0.4, 0.45, 0.55, 0.65]) {
    expect(holeSize({ pin })).toBeLessThan(pin);
    expect(holeSize({ pin })).toBeGreaterThan(pin * 0.8);
    expect(holeSize({ pin, hole: 0.7 })).toBe(0.7);
  }
  expect(holeSize({})).toBe(0.5);
});
