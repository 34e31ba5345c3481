import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberDrills } from '#base/units/gauges/drills.ts';
import { type Gauge, nearestSize } from '#base/units/gauges/gauge.ts';
import { handNeedles, machineNeedles, NEEDLES_DIFFER, tubing } from '#base/units/gauges/needles.ts';
import { americanWire, awgDiameter, britishWire } from '#base/units/gauges/wire.ts';
import { describeWith } from '../../../support/outside.ts';

const all: readonly Gauge[] = [americanWire, britishWire, numberDrills, handNeedles, machineNeedles, tubing];

const mm = ({ sizes }: Gauge, label: string): number => sizes.find((size) => size.label === label)!.mm;

describeWith(['units'], 'whole tables as GNU units has them', () => {
  test.each([
    ['wiregauge', americanWire],
    ['brwiregauge', britishWire],
    ['drillgauge', numberDrills],
  ] as const)('%s', (name, { sizes }) => {
    const asked = sizes.map(({ label }) => `${name}(${label.replace('#', '')})\nmm\n`).join('');
    const told = execFileSync('units', ['-t', '-q', '-d', '12'], { input: asked, encoding: 'utf8' });
    const wanted = told.trim().split(/\s+/).map(Number);
    expect(wanted.length).toBe(sizes.length);
    for (const [i, size] of sizes.entries()) expect(size.mm).toBeCloseTo(wanted[i]!, 9);
  });
});

describe('American wire gauge, ASTM B258', () => {
  test('its two anchors are exact: 0000 is 0.46 in, 36 is 0.005 in', () => {
    expect(awgDiameter(-3)).toBeCloseTo(0.46 * 25.4, 12);
    expect(awgDiameter(36)).toBeCloseTo(0.127, 15);
  });

  test.each([
    [0, 8.2515],
    [10, 2.5882],
    [18, 1.0237],
    [20, 0.8118],
    [22, 0.6438],
    [24, 0.5106],
    [26, 0.4049],
    [28, 0.3211],
    [30, 0.2546],
    [32, 0.2019],
    [40, 0.0799],
  ])('No. %d is %d mm', (number, wanted) => {
    expect(Math.abs(awgDiameter(number) - wanted)).toBeLessThan(5.1e-5);
  });
});

test.each([
  ['15', 1.8288],
  ['18', 1.2192],
  ['20', 0.9144],
  ['23', 0.6096],
  ['26', 0.4572],
  ['27', 0.4166],
  ['30', 0.315],
  ['36', 0.193],
  ['40', 0.1219],
])('British wire gauge %s is %d mm', (label, wanted) => {
  expect(Math.abs(mm(britishWire, label) - wanted)).toBeLessThan(5.1e-5);
});

test.each([
  ['#60', 1.016],
  ['#65', 0.889],
  ['#70', 0.7112],
  ['#75', 0.5334],
  ['#80', 0.3429],
])('number drill %s is %d mm', (label, wanted) => {
  expect(Math.abs(mm(numberDrills, label) - wanted)).toBeLessThan(5.1e-5);
});

describe('needles', () => {
  test('NM 75 is a blade of 0.75 mm (DIN 5325); old machine size s is NM 60 + 5 (s - 8)', () => {
    expect(mm(machineNeedles, 'NM 75')).toBe(0.75);
    for (const [size, number] of [
      [12, 80],
      [14, 90],
    ]) {
      expect(mm(machineNeedles, `NM ${60 + 5 * (size! - 8)}`)).toBeCloseTo(number! / 100, 12);
    }
  });

  test('hand needles grow thinner as their number grows: no more can be asked, since makers differ', () => {
    expect(mm(handNeedles, 'sharps 8')).toBeGreaterThan(mm(handNeedles, 'sharps 10'));
    expect(mm(handNeedles, 'chenille 18')).toBeGreaterThan(mm(handNeedles, 'chenille 24'));
    // Another chart (needle wire gauge on the Birmingham gauge) has No. 10 at 0.406 mm: so far apart are the two.
    expect(mm(handNeedles, 'sharps 10') - 0.406).toBeCloseTo(NEEDLES_DIFFER, 2);
    expect(handNeedles.source).toBe('makers');
  });
});

describe('every gauge', () => {
  test.each(all.map((gauge) => [gauge.name, gauge] as const))(
    '%s: thinnest first, each label once',
    (_, { sizes }) => {
      for (const [i, size] of sizes.entries())
        if (i > 0) expect(size.mm).toBeGreaterThanOrEqual(sizes[i - 1]!.mm);
      expect(new Set(sizes.map(({ label }) => label)).size).toBe(sizes.length);
    },
  );

  test('the nearest size is nearer than all others (seed 9)', () => {
    fc.assert(
      fc.property(fc.constantFrom(...all), fc.double({ min: 0, max: 3, noNaN: true }), (gauge, wanted) => {
        const best = nearestSize(gauge, wanted);
        for (const size of gauge.sizes) {
          expect(Math.abs(best.mm - wanted)).toBeLessThanOrEqual(Math.abs(size.mm - wanted));
        }
      }),
      { seed: 9 },
    );
  });
});
