import { converter, differenceCiede2000 } from 'culori';
import { getDeltaE00 } from 'delta-e';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ciede2000 } from '#base/colour/ciede2000.ts';
import { type Lab, toLab } from '#base/colour/lab.ts';
import { parseHex } from '#base/colour/srgb.ts';
import { sharmaPairs } from './sharma-pairs.ts';

describe('CIEDE2000', () => {
  test.each(sharmaPairs)(
    'pair of Sharma, Wu and Dalal: %d %d %d and %d %d %d',
    (l1, a1, b1, l2, a2, b2, difference) => {
      const [one, other] = [
        { l: l1, a: a1, b: b1 },
        { l: l2, a: a2, b: b2 },
      ];
      expect(ciede2000(one, other)).toBeCloseTo(difference, 4);
      expect(ciede2000(other, one)).toBeCloseTo(difference, 4);
    },
  );

  const anyLab: fc.Arbitrary<Lab> = fc.record({
    l: fc.double({ min: 0, max: 100, noNaN: true }),
    a: fc.double({ min: -110, max: 110, noNaN: true }),
    b: fc.double({ min: -110, max: 110, noNaN: true }),
  });

  it('agrees with the package delta-e on any two colours', () => {
    fc.assert(
      fc.property(anyLab, anyLab, (one, other) => {
        const theirs = getDeltaE00({ L: one.l, A: one.a, B: one.b }, { L: other.l, A: other.a, B: other.b });
        expect(ciede2000(one, other)).toBeCloseTo(theirs, 6);
      }),
    );
  });

  it('is 0 only for the same colour', () => {
    fc.assert(
      fc.property(anyLab, (lab) => {
        expect(ciede2000(lab, lab)).toBe(0);
      }),
    );
    expect(ciede2000({ l: 50, a: 0, b: 0 }, { l: 50.1, a: 0, b: 0 })).toBeGreaterThan(0);
  });
});

describe('CIELAB of sRGB', () => {
  it('agrees with culori, which calls the D65 kind lab65', () => {
    const lab65 = converter('lab65');
    const theirDifference = differenceCiede2000();
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (n) => {
        const hex = `#${n.toString(16).padStart(6, '0')}`;
        const ours = toLab(parseHex(hex)!);
        const theirs = lab65(hex);
        expect(ours.l).toBeCloseTo(theirs.l, 3);
        expect(ours.a).toBeCloseTo(theirs.a, 3);
        expect(ours.b).toBeCloseTo(theirs.b, 3);
        expect(theirDifference(hex, { mode: 'lab65', ...ours })).toBeLessThan(0.001);
      }),
    );
  });
});
