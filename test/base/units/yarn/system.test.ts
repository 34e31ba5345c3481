import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOfTex, texOfCount, type YarnSystem, yarnSystems } from '#base/units/yarn/system.ts';
import { describeWith } from '../../../support/outside.ts';

const systems = Object.keys(yarnSystems) as YarnSystem[];

/** How far two numbers lie apart, as a share of the second. */
const off = (found: number, wanted: number): number => Math.abs(found / wanted - 1);

describeWith(['units'], 'yarn systems as GNU units defines them', () => {
  const units = (have: string, want: string): number =>
    Number(execFileSync('units', ['-t', '-d', '12', have, want], { encoding: 'utf8' }));

  test.each<[YarnSystem, string]>([
    ['tex', '1 tex'],
    ['dtex', '0.1 tex'],
    ['den', '1 denier'],
    ['dram', '1 manchesteryarnnumber'],
    ['Nm', '1/(1 metricyarncount)'],
    ['Ne', '1/(1 cottonyarncount)'],
    ['NeL', '1/(1 linenyarncount)'],
    ['NeK', '1/(1 worstedyarncount)'],
    ['run', '1/(1 woolyarnrun)'],
    ['cut', '1/(1 yarncut)'],
    ['skein', '1 pound / (256 yard)'],
    ['jute', '1 pound / (14400 yard)'],
    ['yd/lb', '1 pound / yard'],
  ])('%s', (system, definition) => {
    expect(off(texOfCount({ system, count: 1 }), units(definition, 'tex'))).toBeLessThan(1e-10);
  });
});

describeWith(['pint-convert'], 'yarn systems as python3-pint defines them', () => {
  // Debian's own Python, which sees Debian's packages.
  const inTex = (definition: string): number => {
    const script = `import pint; u = pint.UnitRegistry(); print((${definition}).to('tex').magnitude)`;
    return Number(execFileSync('/usr/bin/python3', ['-c', script], { encoding: 'utf8' }));
  };

  test.each<[YarnSystem, string]>([
    ['Ne', '1 / u.Quantity(1, "number_english")'],
    ['Nm', '1 / u.Quantity(1, "number_meter")'],
    ['den', 'u.Quantity(1, "denier")'],
    ['dtex', 'u.Quantity(1, "dtex")'],
    ['jute', 'u.Quantity(1, "jute")'],
  ])('%s', (system, definition) => {
    expect(off(texOfCount({ system, count: 1 }), inTex(definition))).toBeLessThan(1e-10);
  });
});

describe('printed factors of ASTM D2260, table 1', () => {
  const convert = (count: number, system: YarnSystem, to: YarnSystem): number =>
    countOfTex(texOfCount({ system, count }), to);

  test.each<[string, YarnSystem, YarnSystem, number, number]>([
    ['cotton count of a metric count', 'Nm', 'Ne', 0.590541, 5e-7],
    ['worsted count of a metric count', 'Nm', 'NeK', 0.885812, 5e-7],
    ['woollen run of a metric count', 'Nm', 'run', 0.310034, 5e-7],
    ['lea of a metric count', 'Nm', 'NeL', 1.65352, 5e-6],
    ['yards to the pound of a metric count', 'Nm', 'yd/lb', 496.055, 5e-4],
    ['lea of a cotton count', 'Ne', 'NeL', 2.8, 5e-8],
    ['worsted of a cotton count', 'Ne', 'NeK', 1.5, 5e-8],
    ['lea of a worsted count', 'NeK', 'NeL', 1.86667, 5e-6],
    ['run of a cotton count', 'Ne', 'run', 0.525, 5e-8],
    ['run of a lea', 'NeL', 'run', 0.1875, 5e-8],
    ['denier of a tex', 'tex', 'den', 9, 5e-8],
    ['denier of a cotton count', 'Ne', 'den', 5314.87, 5e-3],
  ])('%s', (_, from, to, factor, rounding) => {
    expect(Math.abs(convert(1, from, to) - factor)).toBeLessThanOrEqual(rounding);
  });

  test('its worked examples: cotton 10 is worsted 15; 30 tex is cotton 19.7', () => {
    expect(convert(10, 'Ne', 'NeK')).toBeCloseTo(15, 9);
    expect(convert(30, 'tex', 'Ne').toFixed(1)).toBe('19.7');
  });

  test('20 tex is 29.525 Ne, 180 denier and 50 Nm (GATE TF 1992); cotton 40 is 148 dtex (knittingmagic.biz)', () => {
    // The printed 29.525 comes of a rounded 590.5; the exact count is 29.527.
    expect(convert(20, 'tex', 'Ne')).toBeCloseTo(29.525, 2);
    expect(convert(20, 'tex', 'den')).toBeCloseTo(180, 9);
    expect(convert(20, 'tex', 'Nm')).toBeCloseTo(50, 9);
    expect(Math.round(convert(40, 'Ne', 'dtex'))).toBe(148);
  });

  test('20s cotton, 30s worsted and 56s linen are one thickness (C. P. Brooks, Cotton Manufacturing)', () => {
    expect(convert(20, 'Ne', 'NeK')).toBeCloseTo(30, 9);
    expect(convert(20, 'Ne', 'NeL')).toBeCloseTo(56, 9);
  });

  test('9240 yards of 44s cotton weigh a quarter of a pound (C. P. Brooks)', () => {
    const grams = (texOfCount({ system: 'Ne', count: 44 }) * 9240 * 0.9144) / 1000;
    expect(grams / 453.59237).toBeCloseTo(0.25, 12);
  });
});

describe('ticket numbers of sewing threads (onlineclothingstudy.com)', () => {
  test.each([
    [80 / 2, 120],
    [80 / 4, 60],
    [60 / 1, 180],
    [60 / 2, 90],
    [60 / 4, 45],
  ])('Nm %d is ticket %d: three times, where one page on the web has a third', (nm, ticket) => {
    expect(countOfTex(texOfCount({ system: 'Nm', count: nm }), 'metric ticket')).toBeCloseTo(ticket, 9);
  });

  test('40 tex is metric ticket 75', () => {
    expect(countOfTex(40, 'metric ticket')).toBeCloseTo(75, 9);
  });

  test('a cotton ticket is three times the cotton count', () => {
    expect(texOfCount({ system: 'cotton ticket', count: 120 })).toBeCloseTo(
      texOfCount({ system: 'Ne', count: 40 }),
      9,
    );
  });
});

test('there and back again is where it was, in every system (seed 41)', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...systems),
      fc.double({ min: 1e-3, max: 1e5, noNaN: true }),
      (system, count) => {
        expect(off(countOfTex(texOfCount({ system, count }), system), count)).toBeLessThan(1e-12);
      },
    ),
    { seed: 41 },
  );
});

test('a count that is not greater than nought is a fault of the program', () => {
  expect(() => texOfCount({ system: 'Ne', count: 0 })).toThrow(RangeError);
  expect(() => countOfTex(Number.NaN, 'Ne')).toThrow(RangeError);
});
