import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { paperNamed } from '#base/units/paper.ts';
import { COPY_TOLERANCE, copySteps, usualCopier } from '#craft/size/copier.ts';

const size = (name: string) => paperNamed(name)!;

describe('from paper to paper', () => {
  // ISO 216: sides in the ratio of 1 to sqrt 2, each size half the one before; B sizes lie halfway between A sizes.
  test.each([
    ['A3', 'A4', 70.71],
    ['A4', 'A5', 70.48],
    ['A4', 'A3', 141.43],
  ])('%s to %s is one press of the button of machines', (from, to, percent) => {
    const factor = size(to).width / size(from).width;
    expect(factor * 100).toBeCloseTo(percent, 2);
    const chain = copySteps(factor)!;
    expect(chain.percents).toEqual([factor < 1 ? 70.7 : 141.4]);
  });

  test('B to A of the same number is 84 %: two to the power of minus a quarter', () => {
    expect(copySteps(2 ** -0.25)!.percents).toEqual([84]);
    expect(Math.abs(size('A1').width / size('B1').width - 2 ** -0.25)).toBeLessThan(0.001);
  });

  test('Letter fitted to A4 is 97 %', () => {
    const [letter, a4] = [size('Letter'), size('A4')];
    const fit = Math.min(a4.width / letter.width, a4.height / letter.height);
    expect(fit).toBeCloseTo(0.9727, 4);
    expect(copySteps(fit)!.percents).toEqual([97]);
  });

  test('two steps down the A sizes is half: one copy at 50 %, not two at 70.7 %', () => {
    expect(copySteps(0.5)!.percents).toEqual([50]);
    expect(copySteps(0.5, { ...usualCopier, least: 64 })!.percents).toHaveLength(2);
  });
});

describe('the chain of copies', () => {
  test('is empty where nothing changes', () => {
    expect(copySteps(1)).toEqual({ percents: [], reached: 1, off: 0 });
    expect(copySteps(1.004)!.percents).toEqual([]);
  });

  test('of several copies has steps as gentle as can be', () => {
    expect(copySteps(9)!.percents).toEqual([300, 300]);
    expect(copySteps(3, { least: 50, most: 200, presets: [] })!.percents).toEqual([173, 173]);
    expect(copySteps(0.7225, { least: 80, most: 200, presets: [] })!.percents).toEqual([85, 85]);
  });

  test('stays inside the machine, and its product is what it says, within the tolerance', () => {
    const machines = fc.record({
      least: fc.integer({ min: 25, max: 80 }),
      most: fc.integer({ min: 120, max: 400 }),
      presets: fc.constantFrom<readonly number[]>([], [70.7, 141.4]),
    });
    fc.assert(
      fc.property(machines, fc.double({ min: 0.2, max: 5, noNaN: true }), (copier, factor) => {
        const chain = copySteps(factor, copier);
        if (chain === null) {
          // Only what three boldest steps cannot reach is given up.
          expect(factor > (copier.most / 100) ** 3 || factor < (copier.least / 100) ** 3).toBe(true);
          return;
        }
        const product = chain.percents.reduce((all, percent) => (all * percent) / 100, 1);
        expect(product).toBeCloseTo(chain.reached, 12);
        expect(Math.abs(product / factor - 1)).toBeLessThanOrEqual(COPY_TOLERANCE + 1e-12);
        for (const percent of chain.percents) {
          expect(percent).toBeGreaterThanOrEqual(copier.least);
          expect(percent).toBeLessThanOrEqual(copier.most);
          expect(Number.isInteger(percent) || copier.presets.includes(percent)).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('is as short, and as near or as gentle, as trying every chain of one and of two copies says', () => {
    const copier = { least: 60, most: 150, presets: [70.7] };
    const all = [70.7, ...Array.from({ length: 91 }, (_, k) => 60 + k)];
    fc.assert(
      fc.property(fc.double({ min: 0.37, max: 2.2, noNaN: true }), (factor) => {
        const off = (reached: number): number => Math.abs(reached / factor - 1);
        const ones = Math.min(...all.map((one) => off(one / 100)));
        const bold = (percent: number): number => Math.abs(Math.log(percent / 100));
        const pairs = all.flatMap((one) =>
          all.flatMap((two) =>
            off((one * two) / 10_000) <= COPY_TOLERANCE ? [Math.max(bold(one), bold(two))] : [],
          ),
        );
        const chain = copySteps(factor, copier)!;
        if (off(1) <= COPY_TOLERANCE) expect(chain.percents).toHaveLength(0);
        else if (ones <= COPY_TOLERANCE) {
          expect(chain.percents).toHaveLength(1);
          expect(Math.abs(chain.off)).toBeCloseTo(ones, 12);
        } else if (pairs.length > 0) {
          expect(chain.percents).toHaveLength(2);
          expect(Math.max(...chain.percents.map(bold))).toBeCloseTo(Math.min(...pairs), 12);
        }
      }),
    );
  });

  test('gives up what three copies cannot reach', () => {
    expect(copySteps(100)).toBeNull();
    expect(copySteps(0.01)).toBeNull();
  });

  test.each([0, -1, Number.NaN])('of a factor of %d is a mistake of our own', (factor) => {
    expect(() => copySteps(factor)).toThrow(RangeError);
  });
});
