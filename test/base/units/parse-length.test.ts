import { describe, expect, test } from 'vitest';
import { parseLength } from '#base/units/parse-length.ts';

describe('parseLength', () => {
  test.each([
    ['100', 100],
    ['100mm', 100],
    ['12.5', 12.5],
    ['12,5 mm', 12.5],
    [',5', 0.5],
    ['1.25cm', 12.5],
    ['2in', 50.8],
    ['2"', 50.8],
    ['2 inches', 50.8],
    ['½"', 12.7],
    ['3½ in', 88.9],
    ['3/8 in', 9.525],
    ['3 3/8in', 85.725],
    ['0,5in', 12.7],
    ['-3', -3],
    ['1,000', 1],
  ])('%s is %f mm', (text, mm) => expect(parseLength(text)).toBeCloseTo(mm, 9));

  test.each([
    '',
    'mm',
    'ten',
    '1.2.3',
    '1 000',
    '1/0 in',
    '3.5 1/8',
    '12 furlongs',
    '1e3',
    'Infinity',
    'NaN',
    '0x10',
    '5 constructor',
  ])('"%s" is no length', (text) => expect(parseLength(text)).toBeNull());
});
