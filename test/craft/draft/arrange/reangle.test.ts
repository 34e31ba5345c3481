import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance, subtract } from '#base/geometry/point.ts';
import { mirrorPattern, reangleGround, turnPattern } from '#craft/draft/arrange/index.ts';
import { findBrokenReference } from '#pattern/file/references.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins, pinsById } from '#pattern/pins.ts';
import { deepFreeze } from '../../../support/change-laws.ts';
import { edging } from '../../../support/patterns/index.ts';
import { expectSame } from './laws.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const degrees = fc.double({ min: 40, max: 70, noNaN: true });
const reangled = (pattern: Pattern, from: number, to: number): Pattern => {
  const result = reangleGround(deepFreeze(pattern), radians(from), radians(to));
  if (!result.ok) throw new Error(result.trouble.kind);
  return result.value;
};

describe('ground at another angle', () => {
  test('without motifs is what would have been drawn at that angle, wherever it lies', () =>
    fc.assert(
      fc.property(degrees, degrees, fc.double({ min: 0, max: 6, noNaN: true }), (from, to, turn) => {
        const [given, wanted] = [from, to].map((angle) =>
          turnPattern(plain(edging({ angle, bulge: 0, footShift: 0 }).pattern), turn, { x: 7, y: -3 }),
        );
        expectSame(wanted!, reangled(given!, from, to), 1e-9);
      }),
    ));

  test('wider and back is as before: no pin comes into a motif on the way', () =>
    fc.assert(
      fc.property(degrees, degrees, (one, other) => {
        const [from, to] = [Math.min(one, other), Math.max(one, other)];
        const { pattern } = edging({ angle: from, gimp: 0.8 });
        expectSame(pattern, reangled(reangled(pattern, from, to), to, from), 1e-9);
      }),
    ));

  test('from 60 to 54 degrees: cloth diamonds keep their shape, and the lines to them their pins', () => {
    const { pattern } = edging({ angle: 60 });
    const after = reangled(pattern, 60, 54);
    expect(after.marks).toEqual(pattern.marks);
    expect(findBrokenReference(after)).toBeNull();
    const [before, now] = [pinsById(pattern), pinsById(after)];
    for (const { outline } of pattern.areas) {
      const ids = outline.map((anchor) => ('pin' in anchor ? anchor.pin : ''));
      const steps = ids.map((id) => subtract(now.get(id)!, before.get(id)!));
      for (const step of steps) expect(distance(step, steps[0]!)).toBeLessThan(1e-9);
      expect(steps[0]!.y).toBeCloseTo(0, 9);
      expect(steps[0]!.x).toBeLessThan(-1);
    }
    const footside = pattern.runs.find(({ role }) => role === 'footside')!.pins;
    for (const id of footside) expect(distance(now.get(id)!, before.get(id)!)).toBeLessThan(1e-9);
  });

  test('the paper stays, and pins keep in mind where they stood on it', () => {
    const paper = {
      entry: 'paper.jpg',
      sha256: '0'.repeat(64),
      width: 9,
      height: 9,
      toPattern: { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 },
      stood: { p1: { x: 8, y: 9 } },
    };
    const { pattern } = edging({ angle: 60 });
    const after = reangled({ ...pattern, paper }, 60, 54);
    const { x, y } = pattern.pins[2]!;
    expect(after.paper).toMatchObject({
      toPattern: paper.toPattern,
      stood: { p1: { x: 8, y: 9 }, p2: { x, y } },
    });
  });

  test('needs one footside', () => {
    const { pattern } = edging();
    expect(reangleGround(patternFromPins([{ x: 0, y: 0 }]), 1, 1.1)).toEqual({
      ok: false,
      trouble: { kind: 'no-footside' },
    });
    const [run] = mirrorPattern(pattern, { through: { x: 0, y: 0 }, direction: { x: 1, y: 1 } }).runs;
    const across = pattern.pins.slice(0, 3).map(({ id }) => id);
    const turning = { ...pattern, runs: [...pattern.runs, { ...run!, id: 'across', pins: across }] };
    expect(reangleGround(turning, 1, 1.1)).toEqual({ ok: false, trouble: { kind: 'footside-turns' } });
    expect(() => reangleGround(pattern, 1, Math.PI / 2)).toThrow('angle');
  });
});

const plain = (pattern: Pattern): Pattern => ({ ...pattern, areas: [] });
