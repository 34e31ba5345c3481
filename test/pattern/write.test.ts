import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readPattern } from '#pattern/file/read.ts';
import { roundPattern } from '#pattern/file/round.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { arbitraryPattern } from '../support/arbitrary-pattern.ts';
import { deepFreeze } from '../support/change-laws.ts';

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
      '"version":2,',
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

test('the figures of a recipe keep all their digits', () => {
  const recipe = {
    kind: 'strip',
    spacing: 25.4 / 6,
    angle: 52.123456,
    repeats: 1,
    length: 2,
    width: 4,
    ground: 'plain',
  } as const;
  const read = readPattern(writePattern({ ...small, recipe }));
  expect(read.ok && read.value.recipe).toEqual(recipe);
});

test('what could not be read again is not written', () => {
  expect(() => writePattern({ ...small, pins: [{ id: 'p1', x: Number.NaN, y: 0 }] })).toThrow(TypeError);
  expect(() => writePattern({ ...small, pins: [...small.pins, ...small.pins] })).toThrow(/duplicate-id/);
});

test('any pattern comes back as it was, but for the rounding; and is written the same again (seed 1)', () => {
  fc.assert(
    fc.property(arbitraryPattern({ fine: true }), (pattern) => {
      const text = writePattern(deepFreeze(pattern));
      expect(readPattern(text)).toEqual({ ok: true, value: roundPattern(pattern) });
      expect(writePattern(roundPattern(pattern))).toBe(text);
      for (const [i, { x, y }] of roundPattern(pattern).pins.entries()) {
        expect(Math.abs(x - pattern.pins[i]!.x)).toBeLessThanOrEqual(0.0005 + 1e-10);
        expect(Math.abs(y - pattern.pins[i]!.y)).toBeLessThanOrEqual(0.0005 + 1e-10);
      }
    }),
    { seed: 1, numRuns: 200 },
  );
});

test('numbers that a file can carry are not rounded at all (seed 2)', () => {
  fc.assert(
    fc.property(arbitraryPattern(), (pattern) => {
      expect(roundPattern(pattern)).toEqual(pattern);
    }),
    { seed: 2, numRuns: 100 },
  );
});

test('places on the paper are written in the order of the pins', () => {
  const pins = ['b', 'a', 'c'].map((id) => ({ id, x: 0, y: 0 }));
  const at = { x: 1, y: 1 };
  const paper = {
    entry: 'paper.png',
    sha256: '0'.repeat(64),
    width: 1,
    height: 1,
    toPattern: { a: 1 / 3, b: 0, c: 0, d: 1 / 3, e: 1 / 3, f: 0 },
  };
  const one = writePattern({ ...small, pins, paper: { ...paper, stood: { a: at, b: at, c: at } } });
  expect(writePattern({ ...small, pins, paper: { ...paper, stood: { c: at, b: at, a: at } } })).toBe(one);
  expect(one).toContain('"toPattern":{"a":0.333333333,"b":0,"c":0,"d":0.333333333,"e":0.333,"f":0}');
  expect(one).toContain('"stood":{"b":{"x":1,"y":1},"a":');
});
