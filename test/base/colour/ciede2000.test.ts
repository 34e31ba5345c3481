import { converter, differenceCiede2000 } from 'culori';
import { getDeltaE00 } from 'delta-e';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ciede2000 } from '#base/colour/ciede2000.ts';
import { type Lab, toLab } from '#base/colour/lab.ts';
import { parseHex } from '#base/colour/srgb.ts';
import { seededRandom } from '#base/random.ts';
import { sharmaPairs } from './sharma-pairs.ts';

const culori = differenceCiede2000();

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

  /** In hundredths, as colours are published. */
  const anyLab: fc.Arbitrary<Lab> = fc
    .tuple(
      fc.integer({ min: 0, max: 10_000 }),
      fc.integer({ min: -11_000, max: 11_000 }),
      fc.integer({ min: -11_000, max: 11_000 }),
    )
    .map(([l, a, b]) => ({ l: l / 100, a: a / 100, b: b / 100 }));

  /** Where two hues lie exactly opposite, the formula jumps, and the last bit decides (Sharma and others, section 3). */
  const areOpposite = (one: Lab, other: Lab) =>
    Math.abs(one.a * other.b - one.b * other.a) < 1e-6 && one.a * other.a + one.b * other.b < 0;

  it('agrees with the package culori on any two colours', () => {
    fc.assert(
      fc.property(anyLab, anyLab, (one, other) => {
        fc.pre(!areOpposite(one, other));
        const theirs = culori({ mode: 'lab65', ...one }, { mode: 'lab65', ...other });
        expect(ciede2000(one, other)).toBeCloseTo(theirs, 9);
      }),
    );
  });

  // To 3 places: delta-e leaves out the last case of equation (14), which shows from the fifth place on.
  it('agrees with the package delta-e on a thousand colours', () => {
    const random = seededRandom(2000);
    const draw = (): Lab => ({ l: 100 * random(), a: 220 * random() - 110, b: 220 * random() - 110 });
    for (let at = 0; at < 1000; at++) {
      const [one, other] = [draw(), draw()];
      const theirs = getDeltaE00({ L: one.l, A: one.a, B: one.b }, { L: other.l, A: other.a, B: other.b });
      expect(ciede2000(one, other)).toBeCloseTo(theirs, 3);
    }
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
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (n) => {
        const hex = `#${n.toString(16).padStart(6, '0')}`;
        const ours = toLab(parseHex(hex)!);
        const theirs = lab65(hex);
        expect(ours.l).toBeCloseTo(theirs.l, 3);
        expect(ours.a).toBeCloseTo(theirs.a, 3);
        expect(ours.b).toBeCloseTo(theirs.b, 3);
        expect(culori(hex, { mode: 'lab65', ...ours })).toBeLessThan(0.001);
      }),
    );
  });
});
