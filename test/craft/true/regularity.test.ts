import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { findRegularity } from '#craft/true/index.ts';
import { edging, fine, jitter, type KnownPattern, tape } from '../../support/patterns/index.ts';

/** Root mean square distance from the ideal of the pins with these roles, before and after. */
function errorsOf(
  known: KnownPattern,
  places: readonly Point[],
  roles: readonly string[],
): { before: number; after: number } {
  let [before, after, count] = [0, 0, 0];
  known.pattern.pins.forEach((pin, k) => {
    if (!roles.includes(known.roles[k]!)) return;
    before += distance(pin, known.ideal[k]!) ** 2;
    after += distance(places[k]!, known.ideal[k]!) ** 2;
    count++;
  });
  return { before: Math.sqrt(before / count), after: Math.sqrt(after / count) };
}

describe('lattices', () => {
  it.each([1, 2, 3])('brings the ground of a jittered edging to a third of its error (seed %i)', (seed) => {
    const known = jitter(edging(), 0.2, seededRandom(seed));
    const { places } = findRegularity(known.pattern.pins);
    const { before, after } = errorsOf(known, places, ['ground', 'outline']);
    expect(after).toBeLessThan(before / 3);
  });
});

describe('patterns that are exact', () => {
  it.each([
    ['edging', edging()],
    ['fine', fine()],
    ['tape', tape()],
  ])('leaves a drafted %s where it is', (_, known) => {
    const { places, missing } = findRegularity(known.pattern.pins);
    known.pattern.pins.forEach((pin, k) => {
      expect(distance(pin, places[k]!)).toBeLessThan(0.001);
    });
    expect(missing).toEqual([]);
  });
});

describe('few pins', () => {
  it.each<[string, Point[]]>([
    ['no pin', []],
    ['one pin', [{ x: 3, y: 4 }]],
    [
      'two pins',
      [
        { x: 3, y: 4 },
        { x: 5, y: 4 },
      ],
    ],
    ['the same pin nine times', new Array<Point>(9).fill({ x: 1, y: 1 })],
  ])('has an honest answer for %s', (_, pins) => {
    const { places, structures, missing } = findRegularity(pins);
    expect(places).toEqual(pins);
    expect(structures).toEqual([]);
    expect(missing).toEqual([]);
  });
});
