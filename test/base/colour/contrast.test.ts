import { wcagContrast } from 'culori';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { hex as wcagHex } from 'wcag-contrast';
import { contrast } from '#base/colour/contrast.ts';
import { parseHex, toHex } from '#base/colour/srgb.ts';
import { OKABE_ITO } from '#base/colour/visible.ts';

const between = (one: string, other: string) => contrast(parseHex(one)!, parseHex(other)!);
const anyHex = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`);

describe('contrast ratio', () => {
  // Values that two independent packages, wcag-contrast 3.0.0 and culori 4.0.2, print for the WCAG 2.x formula.
  test.each([
    ['#000000', '#ffffff', 21],
    ['#767676', '#ffffff', 4.5422],
    ['#777777', '#ffffff', 4.4781],
    ['#757575', '#ffffff', 4.6075],
    ['#595959', '#ffffff', 7.0047],
    ['#949494', '#ffffff', 3.0335],
    ['#ff0000', '#ffffff', 3.9985],
    ['#0000ff', '#ffffff', 8.5925],
    ['#808080', '#000000', 5.3172],
  ])('of %s and %s is %f', (one, other, ratio) => {
    expect(between(one, other)).toBeCloseTo(ratio, 4);
  });

  // The palette of Okabe and Ito on white, by the same two packages.
  test.each([
    ['#e69f00', 2.2523],
    ['#56b4e9', 2.3075],
    ['#009e73', 3.4211],
    ['#f0e442', 1.3223],
    ['#0072b2', 5.1854],
    ['#d55e00', 3.8672],
    ['#cc79a7', 3.061],
  ])('of the Okabe-Ito colour %s on white is %f', (colour, ratio) => {
    expect(OKABE_ITO).toContain(colour);
    expect(between(colour, '#ffffff')).toBeCloseTo(ratio, 4);
  });

  it('agrees with wcag-contrast and culori on any two colours', () => {
    fc.assert(
      fc.property(anyHex, anyHex, (one, other) => {
        expect(between(one, other)).toBeCloseTo(wcagHex(one, other), 3);
        expect(between(one, other)).toBeCloseTo(wcagContrast(one, other), 3);
      }),
    );
  });
});

describe('hex colours', () => {
  it('come back as they went in', () => {
    fc.assert(
      fc.property(anyHex, (hex) => {
        expect(toHex(parseHex(hex)!)).toBe(hex);
      }),
    );
  });

  it('may have three digits and capital letters', () => {
    expect(parseHex('#F80')).toEqual(parseHex('#ff8800'));
  });

  test.each(['', '#', '#12', '#12345', '#1234567', 'red', '#gggggg', '#12345678', ' #123456', '#123456\n'])(
    'cannot be read from %j',
    (text) => {
      expect(parseHex(text)).toBeNull();
    },
  );
});
