import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dotsPerCmToDpi, dpiToPixelsPerMetre, pixelsPerMetreToDpi } from '#base/units/density.ts';
import { formatBoth, formatInches, formatMm, formatNumber } from '#base/units/format-length.ts';
import { inchesToMm, mmPerPixel, mmToInches, mmToPoints, pointsToMm } from '#base/units/length.ts';
import { parseLength } from '#base/units/parse-length.ts';

const mm = (text: string) => {
  const read = parseLength(text);
  return read.ok ? read.value : read.trouble.kind;
};

describe('lengths as people type them', () => {
  test.each<[string, number]>([
    ['12.5', 12.5],
    ['12,5', 12.5],
    [' 12,5 mm ', 12.5],
    ['12.5MM', 12.5],
    ['2,5 cm', 25],
    [',5', 0.5],
    ['7.', 7],
    ['1,234', 1.234],
    ['½', 0.5],
    ['½ cm', 5],
    ['1½ in', 38.1],
    ['1 ½″', 38.1],
    ['3/8', 0.375],
    ['3⁄8"', 9.525],
    ['1 1/2"', 38.1],
    ['1-1/2 in', 38.1],
    ['1\u00a01/2 inch', 38.1],
    ['2 inches', 50.8],
    ['2”', 50.8],
    ["1''", 25.4],
    ['-3', -3],
    ['−0,5 mm', -0.5],
    ['-0', 0],
    ['⅞ in', 22.225],
    ['0', 0],
  ])('%s', (text, value) => {
    expect(mm(text)).toBeCloseTo(value, 12);
    expect(Object.is(mm(text), -0)).toBe(false);
  });

  test.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['1.234,5', 'two-marks'],
    ['1,234.5', 'two-marks'],
    ['1.234.567', 'two-marks'],
    ['1,234,567', 'two-marks'],
    ['1 234', 'not-a-length'],
    ["1'234", 'not-a-length'],
    ['1,2/3', 'not-a-length'],
    ['1 12/8', 'not-a-length'],
    ['1/0', 'not-a-length'],
    ['0/0', 'not-a-length'],
    ['1e3', 'not-a-length'],
    ['--1', 'not-a-length'],
    ['mm', 'not-a-length'],
    ['NaN', 'not-a-length'],
    ['1½½', 'not-a-length'],
    ['1/2/3', 'not-a-length'],
    ['3 - 1', 'not-a-length'],
    ['5 m', 'unknown-unit'],
    ['5 px', 'unknown-unit'],
    ["5'", 'unknown-unit'],
    ['5 mmm', 'unknown-unit'],
    ['9'.repeat(400), 'not-a-length'],
  ])('%s is refused', (text, kind) => {
    expect(mm(text)).toBe(kind);
  });

  test('a unit of one’s own where none is typed', () => {
    expect(parseLength('1/2', 'in')).toEqual({ ok: true, value: 12.7 });
    expect(parseLength('1/2 mm', 'in')).toEqual({ ok: true, value: 0.5 });
  });

  test('what is written is read again, with either mark (seed 254)', () => {
    fc.assert(
      fc.property(fc.integer({ min: -10_000_000, max: 10_000_000 }), (thousandths) => {
        const text = formatMm(thousandths / 1000, 3);
        expect(mm(text)).toBe(thousandths / 1000);
        expect(mm(text.replace('.', ','))).toBe(thousandths / 1000);
      }),
      { seed: 254 },
    );
  });

  test('no text makes it throw or gives what is not a number (seed 7)', () => {
    const unit = fc.constantFrom(...'0123456789.,/-+ ½⅓″"mcin\u00a0e');
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit })), (text) => {
        const read = parseLength(text);
        expect(!read.ok || Number.isFinite(read.value)).toBe(true);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });

  test('a long text takes no long time', () => {
    expect(mm(`${'1 '.repeat(200_000)}x`)).toBe('not-a-length');
    expect(mm(`${' '.repeat(200_000)}1`)).toBe(1);
  });
});

describe('lengths as they are shown', () => {
  test.each([
    [12.5, '12.5 mm'],
    [100, '100 mm'],
    [0.001, '0 mm'],
    [-0.001, '0 mm'],
    [1.005, '1.01 mm'],
    [-1.005, '-1.01 mm'],
    [1e-7, '0 mm'],
    [-1e-7, '0 mm'],
    [10, '10 mm'],
    [123456.789, '123456.79 mm'],
  ])('%d', (value, text) => {
    expect(formatMm(value)).toBe(text);
  });
  test('whole numbers keep their noughts', () => {
    expect(formatNumber(100, 0)).toBe('100');
    expect(formatNumber(1200, 3)).toBe('1200');
  });
  test('inches, and both', () => {
    expect(formatInches(25.4)).toBe('1 in');
    expect(formatBoth(100)).toBe('100 mm (3.937 in)');
  });
  test('no number is no length', () => {
    expect(() => formatMm(Number.NaN)).toThrow(RangeError);
  });
});

describe('the international inch', () => {
  // Agreement of 1959 (Federal Register 59-5442): 1 yard = 0.9144 m exactly, so 1 inch = 25.4 mm exactly.
  test('a yard is 914.4 mm', () => {
    expect(inchesToMm(36)).toBeCloseTo(914.4, 10);
    expect(mmToInches(914.4)).toBeCloseTo(36, 12);
  });
  // ISO 32000-1, 8.3.2.3: the default unit of a PDF page is 1/72 inch; A4 is then 595.276 by 841.890.
  test('A4 in points', () => {
    expect(mmToPoints(210)).toBeCloseTo(595.2756, 4);
    expect(mmToPoints(297)).toBeCloseTo(841.8898, 4);
    expect(pointsToMm(72)).toBeCloseTo(25.4, 12);
  });
});

describe('pixels and lengths in picture files', () => {
  // PNG pHYs (ISO/IEC 15948, 11.3.4.3) holds whole pixels a metre: 300 dpi is written 11811, 600 dpi 23622, 72 dpi 2835.
  test.each([
    [300, 11811],
    [600, 23622],
    [72, 2835],
  ])('%d dpi in a PNG file', (dpi, pixels) => {
    expect(Math.round(dpiToPixelsPerMetre(dpi))).toBe(pixels);
    expect(Math.round(pixelsPerMetreToDpi(pixels))).toBe(dpi);
  });
  // JFIF (ITU-T T.871, 10.1), unit 2: dots a centimetre. 300 dpi is written 118, which says 299.72.
  test('dots a centimetre in a JFIF file', () => {
    expect(dotsPerCmToDpi(118)).toBeCloseTo(299.72, 10);
    expect(dotsPerCmToDpi(1)).toBeCloseTo(2.54, 12);
  });
  test('a picture of 254 dpi has ten pixels a millimetre', () => {
    expect(mmPerPixel(254)).toBeCloseTo(0.1, 14);
  });
});
