import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyAffine, compose, rotation, scaling, translation } from '#base/geometry/affine.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { findRegularity } from '#craft/true/index.ts';
import { edging, round, tape } from '../../support/patterns/index.ts';
import { byHand } from './measure.ts';

const cases = [
  ['edging', byHand(edging({ repeats: 3 }), 0.15, seededRandom(1))],
  ['tape', byHand(tape({ repeats: 2 }), 0.12, seededRandom(2))],
  ['mat', byHand(round({ rings: 10 }), 0.12, seededRandom(3))],
] as const;

describe.each(cases)('the %s, moved as a whole', (_, { pattern }) => {
  const pins: readonly Point[] = pattern.pins.map(({ x, y }) => ({ x, y }));
  const plain = findRegularity(pins);
  const kindsOf = ({ structures }: typeof plain): string[] => structures.map(({ kind }) => kind).sort();

  /**
   * The share of pins that end where the plain answer, moved likewise, puts them, to well within the jitter: where two
   * readings are equally good, which one is taken may hang on the last bit of a coordinate.
   */
  const agrees = (places: readonly Point[], expected: readonly Point[], size: number): number =>
    places.filter((place, k) => distance(place, expected[k]!) < 0.09 * size).length / places.length;

  it('moves along with a shift', () => {
    const map = translation(-31.7, 208.4);
    const moved = findRegularity(pins.map((pin) => applyAffine(map, pin)));
    expect(kindsOf(moved)).toEqual(kindsOf(plain));
    expect(
      agrees(
        moved.places,
        plain.places.map((place) => applyAffine(map, place)),
        1,
      ),
    ).toBeGreaterThan(0.99);
  });

  it.each([0.3, 1.1, 2.5])('turns along with a turn by %d radians', (angle) => {
    const map = compose(translation(90, 140), rotation(angle));
    const moved = findRegularity(pins.map((pin) => applyAffine(map, pin)));
    expect(
      agrees(
        moved.places,
        plain.places.map((place) => applyAffine(map, place)),
        1,
      ),
    ).toBeGreaterThan(0.9);
  });

  it.each([0.1, 11.811, 1e3])('grows along with a scale of %d', (size) => {
    const map = scaling(size);
    const moved = findRegularity(pins.map((pin) => applyAffine(map, pin)));
    expect(
      agrees(
        moved.places,
        plain.places.map((place) => applyAffine(map, place)),
        size,
      ),
    ).toBeGreaterThan(0.97);
  });

  it('hardly depends on the order of the pins', () => {
    const random = seededRandom(8);
    const order = pins
      .map((_, k) => ({ k, at: random() }))
      .sort((p, q) => p.at - q.at)
      .map(({ k }) => k);
    const shuffled = findRegularity(order.map((k) => pins[k]!));
    expect(
      agrees(
        shuffled.places,
        order.map((k) => plain.places[k]!),
        1,
      ),
    ).toBeGreaterThan(0.95);
  });

  it('gives the same answer twice', () => {
    expect(findRegularity(pins)).toEqual(plain);
  });
});

describe('any pins at all', () => {
  const coordinate = fc.oneof(
    fc.integer({ min: -20, max: 20 }),
    fc.double({ min: -300, max: 300, noNaN: true, noDefaultInfinity: true }),
  );

  it('get one answer each, and those in no structure keep their place bit by bit', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ x: coordinate, y: coordinate }), { maxLength: 60 }), (pins) => {
        const { places, structureOf, structures, missing, stray } = findRegularity(pins);
        const ids = new Set(structures.map(({ id }) => id));
        expect(places).toHaveLength(pins.length);
        expect(structureOf).toHaveLength(pins.length);
        pins.forEach((pin, k) => {
          const id = structureOf[k]!;
          if (id === null) {
            expect(Object.is(places[k]!.x, pin.x) && Object.is(places[k]!.y, pin.y)).toBe(true);
          } else expect(ids.has(id)).toBe(true);
          expect(Number.isFinite(places[k]!.x + places[k]!.y)).toBe(true);
        });
        for (const one of missing) {
          expect(one.confidence).toBeGreaterThan(0);
          expect(one.confidence).toBeLessThanOrEqual(1);
          expect(ids.has(one.structure)).toBe(true);
          expect(Number.isFinite(one.x + one.y)).toBe(true);
        }
        for (const pin of stray) expect(pin).toBeLessThan(pins.length);
      }),
      { numRuns: 60, seed: 5 },
    );
  });

  it('on one line, evenly or not, stay on it', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { maxLength: 40 }), (xs) => {
        const pins = xs.map((x) => ({ x, y: 0.5 * x }));
        for (const { x, y } of findRegularity(pins).places) expect(Math.abs(y - 0.5 * x)).toBeLessThan(1e-3);
      }),
      { numRuns: 40, seed: 6 },
    );
  });

  it('are refused where a coordinate is no number', () => {
    expect(() => findRegularity([{ x: Number.NaN, y: 0 }])).toThrow(RangeError);
  });
});
