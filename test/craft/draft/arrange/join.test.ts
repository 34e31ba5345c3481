import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { joinPatterns, mirrorPattern, repeatPattern, shiftPattern } from '#craft/draft/arrange/index.ts';
import { findBrokenReference } from '#pattern/file/references.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { arbitraryPattern } from '../../../support/arbitrary-pattern.ts';
import { deepFreeze } from '../../../support/change-laws.ts';
import { edging } from '../../../support/patterns/index.ts';

const figures = fc.record({
  spacing: fc.double({ min: 2, max: 8, noNaN: true }),
  angle: fc.double({ min: 40, max: 65, noNaN: true }),
  repeats: fc.integer({ min: 1, max: 3 }),
});
const value = (result: ReturnType<typeof joinPatterns>): Pattern => {
  if (!result.ok) throw new Error(result.trouble.kind);
  return result.value;
};

describe('repeat', () => {
  test('of an edging is the longer edging: no pin doubled, edges going on, ends meeting', () =>
    fc.assert(
      fc.property(figures, fc.integer({ min: 1, max: 5 }), (given, count) => {
        const { pattern } = edging(given);
        const { step, count: had = 1 } = pattern.repeat!;
        const whole = { x: step.x * had, y: step.y * had };
        const repeated = value(repeatPattern(deepFreeze(pattern), whole, count));
        const drawn = edging({ ...given, repeats: given.repeats * count }).pattern;

        expect(repeated.pins.length).toBe(drawn.pins.length);
        const index = new PointIndex(drawn.pins);
        for (const pin of repeated.pins) expect(index.nearest(pin, 0.001)).not.toBeNull();
        expect(repeated.repeat).toEqual({ step, count: given.repeats * count });
        expect(findBrokenReference(repeated)).toBeNull();
        expect(joinedUp(repeated)).toEqual(joinedUp(drawn));
        expect(repeated.areas.length).toBe(drawn.areas.length);
        expect(repeated.runs.filter(({ role }) => role === 'footside').length).toBe(1);
        // fans of one part are runs of their own; the last of a part and the first of the next go on as one
        expect(repeated.runs.filter(({ role }) => role === 'headside').length).toBe(
          given.repeats * count - (count - 1),
        );
      }),
      { numRuns: 30 },
    ));

  test('backwards keeps the direction of the runs', () => {
    const { pattern } = edging({ repeats: 1 });
    const { step } = pattern.repeat!;
    const repeated = value(repeatPattern(pattern, { x: 0, y: -step.y }, 3));
    const footside = repeated.runs.find(({ role }) => role === 'footside')!;
    const ys = footside.pins.map((id) => repeated.pins.find((pin) => pin.id === id)!.y);
    expect(ys).toEqual(ys.toSorted((a, b) => a - b));
    expect(footside.pins.length).toBe(19);
  });

  test('once is as before but for the repeat', () =>
    fc.assert(
      fc.property(arbitraryPattern({ fine: true }), (pattern) => {
        const once = value(repeatPattern(pattern, { x: 1, y: 2 }, 1));
        expect(once.pins).toEqual(pattern.pins);
        expect(once.marks).toEqual(pattern.marks);
        expect(once.areas).toEqual(pattern.areas);
      }),
    ));

  test('many times costs no more than its pins', () => {
    const { pattern } = edging({ repeats: 1 });
    const { step } = pattern.repeat!;
    const repeated = value(repeatPattern(pattern, step, 1000));
    expect(repeated.runs.find(({ role }) => role === 'footside')?.pins.length).toBe(6001);
  });

  test('that goes nowhere, or makes too many pins, is refused', () => {
    const pattern = patternFromPins([
      { x: 0, y: 0 },
      { x: 1, y: 0 },
    ]);
    expect(repeatPattern(pattern, { x: 0, y: 0.0001 }, 3)).toEqual({
      ok: false,
      trouble: { kind: 'no-step' },
    });
    expect(repeatPattern(pattern, { x: 0, y: 5 }, 500_001)).toEqual({
      ok: false,
      trouble: { kind: 'too-many-pins', given: 1_000_002, most: 1_000_000 },
    });
    expect(() => repeatPattern(pattern, { x: 0, y: 5 }, 1.5)).toThrow('count');
  });
});

describe('join', () => {
  test('ids are used once, references resolve and pins keep their places, whatever is joined', () =>
    fc.assert(
      fc.property(arbitraryPattern({ fine: true }), arbitraryPattern({ fine: true }), (one, other) => {
        const joined = value(joinPatterns([deepFreeze(one), deepFreeze({ ...other, unit: one.unit })]));
        expect(findBrokenReference(joined)).toBeNull();
        const index = new PointIndex(joined.pins);
        for (const pin of [...one.pins, ...other.pins]) expect(index.nearest(pin, 0.01)).not.toBeNull();
      }),
    ));

  test('a pattern and its image in its own edge are one piece, whose ends close', () => {
    const half = squareHalf();
    const joined = value(
      joinPatterns([half, mirrorPattern(half, { through: { x: 0, y: 0 }, direction: { x: 0, y: 1 } })]),
    );
    expect(joined.pins.length).toBe(4);
    expect(joined.runs).toMatchObject([
      { id: 'edge', closed: true, pins: ['b2.right', 'top', 'right', 'bottom'] },
    ]);
    expect(joined.marks.map(({ id }) => id)).toEqual(['middle']);
  });

  test('a pattern on itself is itself', () => {
    const { pattern } = edging();
    expect(value(joinPatterns([pattern, pattern]))).toEqual(pattern);
  });

  test('lines go on only where they stay straight', () => {
    const { pattern } = edging({ repeats: 1 });
    const end = pattern.runs.find(({ role }) => role === 'footside')!.pins.at(-1)!;
    const { x, y } = pattern.pins.find(({ id }) => id === end)!;
    const corner = value(
      joinPatterns([pattern, mirrorPattern(pattern, { through: { x, y }, direction: { x: 1, y: 1 } })]),
    );
    expect(corner.runs.filter(({ role }) => role === 'footside').length).toBe(2);
  });

  test('pins that are only near stay apart', () => {
    const pair = patternFromPins([
      { x: 0, y: 0 },
      { x: 5, y: 0 },
    ]);
    expect(value(joinPatterns([pair, shiftPattern(pair, { x: 5.02, y: 0 })])).pins.length).toBe(4);
    expect(value(joinPatterns([pair, shiftPattern(pair, { x: 5.005, y: 0 })])).pins.length).toBe(3);
  });

  test('millimetres and pixels are not mixed', () => {
    const pattern = patternFromPins([{ x: 0, y: 0 }]);
    expect(joinPatterns([pattern, { ...pattern, unit: 'px' }])).toEqual({
      ok: false,
      trouble: { kind: 'units-differ' },
    });
  });
});

/** How often lines of each length occur: says whether two patterns have the same working lines, whatever their ids. */
function joinedUp({ pins, marks }: Pattern): Map<string, number> {
  const byId = new Map(pins.map((pin) => [pin.id, pin]));
  const lengths = new Map<string, number>();
  for (const mark of marks) {
    if (mark.kind !== 'line' || !('pin' in mark.from) || !('pin' in mark.to)) continue;
    const key = distance(byId.get(mark.from.pin)!, byId.get(mark.to.pin)!).toFixed(3);
    lengths.set(key, (lengths.get(key) ?? 0) + 1);
  }
  return lengths;
}

const squareHalf = (): Pattern => ({
  ...patternFromPins([]),
  pins: [
    { id: 'top', x: 0, y: -1 },
    { id: 'right', x: 1, y: 0 },
    { id: 'bottom', x: 0, y: 1 },
  ],
  runs: [
    {
      id: 'edge',
      pins: ['top', 'right', 'bottom'],
      shape: 'curve',
      closed: false,
      role: 'headside',
      even: true,
    },
  ],
  marks: [{ id: 'middle', kind: 'line', from: { pin: 'top' }, to: { pin: 'bottom' } }],
});
