import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { roundRoller, type Stretch, USUAL_LIMIT, wholeRepeats } from '#craft/size/repeats.ts';

const side = (length: number, corners = 0): Stretch => ({ length, corners });

function choices(repeat: number, stretches: readonly Stretch[], limit = USUAL_LIMIT) {
  const fitted = wholeRepeats(repeat, stretches, { limit });
  if (!fitted.ok) throw new Error(fitted.trouble.kind);
  return fitted.value;
}

const lengths = fc.double({ min: 20, max: 3000, noNaN: true });
const repeats = fc.double({ min: 2, max: 200, noNaN: true });

describe('whole repeats', () => {
  test('that fit already cost nothing', () => {
    const { best } = choices(24, [side(480)]);
    expect(best).toMatchObject({ way: 'scale', counts: [20], scale: 1, ease: [0], cost: 0 });
  });

  test('round a roller of 478 mm: 20 of 24 mm, a little smaller', () => {
    const { best, choices: all } = choices(24, [side(478)]);
    expect(best.counts).toEqual([20]);
    expect(best.scale).toBe(478 / 480);
    expect(all.map(({ counts }) => counts[0])).toEqual([18, 19, 20, 21]);
    // 478/456 is 4.8 % too large, 478/504 is 5.2 % too small: the limit is 5 %.
    expect(all.map(({ fits }) => fits)).toEqual([false, true, true, false]);
  });

  test('between corners: a square cloth takes the same on all sides', () => {
    // 280 = 10 repeats of 24 and corners of 20 at each end.
    const { best } = choices(24, [side(280, 40), side(280, 40)]);
    expect(best).toMatchObject({ counts: [10, 10], cost: 0 });
  });

  test('a cloth that is not square shares what is left over fairly', () => {
    const { best } = choices(24, [side(283, 40), side(330, 40)]);
    expect(best.counts).toEqual([10, 12]);
    const [one, two] = best.ease;
    expect(one! / 283).toBeCloseTo(-two! / 330, 4);
  });

  test('the equation holds, counts are whole, and the best is the cheapest', () => {
    const stretches = fc.array(
      fc
        .tuple(lengths, fc.double({ min: 0, max: 15, noNaN: true }))
        .map(([length, corners]) => side(length, corners)),
      { minLength: 1, maxLength: 2 },
    );
    fc.assert(
      fc.property(repeats, stretches, (repeat, sides) => {
        const fitted = wholeRepeats(repeat, sides, { limit: 10 });
        if (!fitted.ok) throw new Error('not at a limit of ten times');
        for (const { counts, scale, ease, cost } of fitted.value.choices) {
          counts.forEach((count, k) => {
            expect(Number.isInteger(count)).toBe(true);
            expect(count).toBeGreaterThanOrEqual(1);
            const made = scale * (count * repeat + sides[k]!.corners) + ease[k]!;
            expect(Math.abs(made - sides[k]!.length)).toBeLessThan(1e-9 * sides[k]!.length);
          });
          expect(cost).toBeGreaterThanOrEqual(fitted.value.best.cost - 1e-12);
        }
      }),
    );
  });

  test('no number of repeats costs less than the best of one stretch', () => {
    fc.assert(
      fc.property(repeats, lengths, (repeat, length) => {
        const fitted = wholeRepeats(repeat, [side(length)], { limit: 100 });
        if (!fitted.ok) throw new Error('not at any limit');
        const tried = Array.from({ length: 2000 }, (_, k) => Math.abs(length / ((k + 1) * repeat) - 1));
        expect(fitted.value.best.cost).toBeLessThanOrEqual(Math.min(...tried) + 1e-12);
      }),
    );
  });

  test('scale with the pattern: all lengths twice as long give the same choices', () => {
    fc.assert(
      fc.property(repeats, lengths, (repeat, length) => {
        const options = { limit: 100 };
        const [one, two] = [
          wholeRepeats(repeat, [side(length, 4)], options),
          wholeRepeats(2 * repeat, [side(2 * length, 8)], options),
        ];
        if (!one.ok || !two.ok) throw new Error('not at any limit');
        expect(two.value.best.counts).toEqual(one.value.best.counts);
        expect(two.value.best.scale).toBeCloseTo(one.value.best.scale, 12);
      }),
    );
  });

  test('nothing within the limit gives the nearest', () => {
    const fitted = wholeRepeats(100, [side(150)], { limit: 0.05 });
    expect(fitted).toMatchObject({
      ok: false,
      trouble: { kind: 'repeats-over-limit', limit: 0.05, nearest: { counts: [2], scale: 0.75 } },
    });
  });

  test('corners longer than the side say so', () => {
    expect(wholeRepeats(24, [side(30, 40)])).toMatchObject({
      ok: false,
      trouble: { kind: 'corners-too-long', corners: 40, length: 30 },
    });
  });

  test('a card round a roller is as long as its middle layer', () => {
    // The circle through the middle of the card has a radius larger by half its thickness.
    const radius = 480 / (2 * Math.PI);
    expect(roundRoller(480, 0.4)).toBeCloseTo(2 * Math.PI * (radius + 0.2), 9);
  });

  test('of a length of nought are a mistake of our own', () => {
    expect(() => wholeRepeats(0, [side(100)])).toThrow(RangeError);
    expect(() => wholeRepeats(10, [side(0)])).toThrow(RangeError);
  });
});
