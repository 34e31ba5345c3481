import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { type BendFigures, bendOf, radiusOfChord } from '#craft/draft/ring/bend.ts';

const figures = fc.record({
  spacing: fc.double({ min: 1, max: 10, noNaN: true }),
  spacings: fc.integer({ min: 12, max: 400 }),
  arc: fc.double({ min: 0.2, max: 2 * Math.PI, noNaN: true }),
  foot: fc.constantFrom('inside' as const, 'outside' as const),
});
/** A place of the strip in parts of the whole length, so that growth stays below about exp(2). */
const part = fc.record({
  x: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  y: fc.double({ min: 0, max: 1, noNaN: true }),
});

const placeIn = ({ spacing, spacings }: BendFigures, { x, y }: Point): Point => ({
  x: x * spacing * spacings,
  y: y * spacing * spacings,
});

/** The derivative of the map along a direction, by central differences. */
function tangent(place: (flat: Point) => Point, at: Point, direction: number, step: number): Point {
  const to = place({ x: at.x + step * Math.cos(direction), y: at.y + step * Math.sin(direction) });
  const from = place({ x: at.x - step * Math.cos(direction), y: at.y - step * Math.sin(direction) });
  return { x: (to.x - from.x) / (2 * step), y: (to.y - from.y) / (2 * step) };
}

describe('the map that bends a strip', () => {
  it('keeps angles and handedness: its Jacobian is a turn times one growth (Cauchy and Riemann)', () => {
    fc.assert(
      fc.property(figures, part, (given, at) => {
        const bend = bendOf(given);
        const flat = placeIn(given, at);
        const step = 1e-4 * given.spacing;
        const across = tangent(bend.place, flat, 0, step);
        const along = tangent(bend.place, flat, Math.PI / 2, step);
        const growth = bend.growth(flat);
        expect(along.x / growth).toBeCloseTo(-across.y / growth, 6);
        expect(along.y / growth).toBeCloseTo(across.x / growth, 6);
        expect(Math.hypot(across.x, across.y) / growth).toBeCloseTo(1, 6);
      }),
    );
  });

  it('grows from column to column by exp(rate times column), whatever the column', () => {
    fc.assert(
      fc.property(figures, part, (given, at) => {
        const bend = bendOf(given);
        const flat = placeIn(given, at);
        const column = given.spacing / 2;
        const sign = given.foot === 'inside' ? 1 : -1;
        const here = bend.place(flat);
        const next = bend.place({ x: flat.x + column, y: flat.y });
        expect(Math.hypot(next.x, next.y) / Math.hypot(here.x, here.y)).toBeCloseTo(
          Math.exp((sign * given.arc * column) / (given.spacing * given.spacings)),
          12,
        );
      }),
    );
  });

  it('keeps the footside spacing as the straight distance from pin to pin', () => {
    fc.assert(
      fc.property(figures, fc.nat(300), (given, k) => {
        const { place } = bendOf(given);
        const y = (k % given.spacings) * given.spacing;
        expect(distance(place({ x: 0, y }), place({ x: 0, y: y + given.spacing }))).toBeCloseTo(
          given.spacing,
          9,
        );
      }),
    );
  });

  // Machinery's Handbook, "Lengths of Chords for Spacing Off the Circumferences of Circles": chord for radius 1.
  it.each([
    [7, 0.867767],
    [12, 0.517638],
    [60, 0.104672],
    [100, 0.0628215],
  ])('gives %i pins on a circle the chord that the published table has', (pins, chord) => {
    expect(radiusOfChord(chord, (2 * Math.PI) / pins)).toBeCloseTo(1, 5);
    const { radius, place } = bendOf({ spacing: chord, spacings: pins, arc: 2 * Math.PI, foot: 'inside' });
    expect(radius).toBeCloseTo(1, 5);
    expect(distance(place({ x: 0, y: 0 }), place({ x: 0, y: chord }))).toBeCloseTo(chord, 12);
  });

  it('lays the middle of the strip straight below the centre', () => {
    for (const foot of ['inside', 'outside'] as const) {
      const { place, radius } = bendOf({ spacing: 4, spacings: 10, arc: 2, foot });
      const middle = place({ x: 0, y: 20 });
      expect(middle.x).toBeCloseTo(0, 12);
      expect(middle.y).toBeCloseTo(radius, 12);
    }
  });
});
