import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clothMass, clothOf, coverOf, latticeCloth } from '#craft/size/cloth.ts';
import { type Thread, threadOf } from '#craft/size/thread.ts';

function wound(wrapsPerCm: number): Thread {
  const thread = threadOf({ name: 'linen', fibre: 'linen', wrapsPerCm });
  if (!thread.ok) throw new Error('no thread');
  return thread.value;
}

/** Twelve wraps in a footside gap of 4 mm. */
const torchon = latticeCloth(2, 2);

describe('cover of cloth stitch', () => {
  test('twelve wraps to the gap on a lattice of 45 degrees: passives hide a third, workers two thirds, seven ninths in all', () => {
    const { cover, passivesPerMm, workersPerMm } = clothOf(torchon, wound(30));
    expect(passivesPerMm).toBeCloseTo(1, 12);
    expect(workersPerMm).toBeCloseTo(2, 12);
    expect(cover.passives).toBeCloseTo(1 / 3, 12);
    expect(cover.workers).toBeCloseTo(2 / 3, 12);
    expect(cover.whole).toBeCloseTo(7 / 9, 12);
  });

  test('is of no size: grid and thread made larger alike leave it as it is (seed 31)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 4, noNaN: true }), (factor) => {
        const large = clothOf(latticeCloth(2 * factor, 2 * factor), wound(30 / factor));
        const small = clothOf(torchon, wound(30));
        expect(large.cover.whole).toBeCloseTo(small.cover.whole, 12);
        expect(large.crimp!.workers).toBeCloseTo(small.crimp!.workers, 12);
        expect(large.hand).toBe(small.hand);
      }),
      { seed: 31 },
    );
  });

  test('is what is left when both sets hide their share of the rest (Peirce 1937: K = k1 + k2 - k1 k2)', () => {
    const { passives, workers, whole } = coverOf(1.2, 2.1, 0.3);
    expect(1 - whole).toBeCloseTo((1 - passives) * (1 - workers), 14);
  });

  test('never shrinks as the thread grows thicker, and never passes one (seed 7)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 80, noNaN: true }),
        fc.double({ min: 1, max: 2, noNaN: true }),
        (wraps, more) => {
          const thin = clothOf(torchon, wound(wraps * more)).cover.whole;
          const thick = clothOf(torchon, wound(wraps)).cover.whole;
          expect(thick).toBeGreaterThanOrEqual(thin - 1e-12);
          expect(thick).toBeLessThanOrEqual(1);
        },
      ),
      { seed: 7 },
    );
  });
});

describe('how it comes out', () => {
  test('from open to more than can be worked, as the thread grows thicker', () => {
    const hands = [50, 35, 30, 22, 17, 8].map((wraps) => clothOf(torchon, wound(wraps)).hand);
    expect(hands).toEqual(['open', 'even', 'even', 'full', 'crowded', 'impossible']);
  });

  test('where stiff threads cannot interlace there is neither crimp nor weight', () => {
    expect(clothOf(torchon, wound(8))).toMatchObject({ crimp: null, mass: null });
  });

  test('a trail: ten pairs in 8 mm, a pin every 2 mm along each edge', () => {
    const { passivesPerMm, workersPerMm } = clothOf({ pairs: 10, width: 8, pins: 2 }, wound(30));
    expect(passivesPerMm).toBeCloseTo(2.5, 12);
    expect(workersPerMm).toBeCloseTo(2, 12);
  });
});

describe('weight and crimp', () => {
  test('30 tex, 40 to the cm, and 20 tex, 30 to the cm, with 10 % crimp: 198 g/m2 (GATE 2009)', () => {
    expect(clothMass(30, 4, 0.1) + clothMass(20, 3, 0.1)).toBeCloseTo(198, 10);
  });

  test('the set that crosses more threads to the millimetre is the more crimped', () => {
    const { crimp, mass } = clothOf(torchon, wound(30));
    expect(crimp!.passives).toBeGreaterThan(crimp!.workers);
    const { tex } = wound(30);
    expect(mass).toBeCloseTo(clothMass(tex, 1, crimp!.passives) + clothMass(tex, 2, crimp!.workers), 9);
  });

  test('square cloth packed full has the crimp of the book, 20.92 %', () => {
    const thread = wound(30);
    const spacing = Math.sqrt(3) * thread.compact;
    // Two threads to a pair, four to a pin: one thread each `spacing` in both directions.
    const { crimp } = clothOf({ pairs: 1, width: 2 * spacing, pins: 4 * spacing }, thread);
    expect(crimp!.passives).toBeCloseTo(0.209_199_58, 6);
    expect(crimp!.workers).toBeCloseTo(0.209_199_58, 6);
  });
});
