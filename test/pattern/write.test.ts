import { expect, test } from 'vitest';
import type { Pattern } from '#pattern/pattern.ts';
import { readPattern } from '#pattern/read.ts';
import { writePattern } from '#pattern/write.ts';

const small: Pattern = {
  unit: 'mm',
  about: {},
  pins: [{ id: 'p1', x: 12.5, y: 30 }],
  runs: [],
  marks: [],
  areas: [],
  sizes: {},
  scale: { from: 'none' },
};

test('a small file, letter by letter', () => {
  expect(writePattern(small)).toBe(
    [
      '{',
      '"format":"pinlight-pattern",',
      '"version":1,',
      '"unit":"mm",',
      '"pins":[',
      '{"id":"p1","x":12.5,"y":30}',
      '],',
      '"scale":{"from":"none"}',
      '}',
      '',
    ].join('\n'),
  );
});

test('the order in which a program made the keys does not show', () => {
  const { pins, ...rest } = small;
  expect(writePattern({ pins: pins.map(({ id, x, y }) => ({ y, x, id })), ...rest })).toBe(
    writePattern(small),
  );
});

test('numbers are rounded to 0.001', () => {
  const text = writePattern({ ...small, pins: [{ id: 'p1', x: 1 / 3, y: -0.0001, confidence: 2 / 3 }] });
  expect(text).toContain('{"id":"p1","x":0.333,"y":0,"confidence":0.667}');
});

test('what could not be read again is not written', () => {
  expect(() => writePattern({ ...small, pins: [{ id: 'p1', x: Number.NaN, y: 0 }] })).toThrow(TypeError);
  expect(() => writePattern({ ...small, pins: [...small.pins, ...small.pins] })).toThrow(/duplicate-id/);
});

test('reading back gives the same pattern', () => {
  expect(readPattern(writePattern(small))).toEqual({ ok: true, value: small });
});
