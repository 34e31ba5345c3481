import { expect, test } from 'vitest';
import { anchorPoint } from '#pattern/anchors.ts';
import { readPattern } from '#pattern/file/read.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import {
  boxOfPattern,
  boxOfPins,
  emptyPattern,
  findPin,
  patternFromPins,
  pinIndex,
  pinsById,
} from '#pattern/pins.ts';

const three = patternFromPins([
  { x: 1, y: 2 },
  { x: 5, y: 1 },
  { x: 3, y: 9 },
]);
const renamed: Pattern = {
  ...three,
  pins: three.pins.map((pin, i) => ({ ...pin, id: ['2', 'b', 'constructor'][i]! })),
};

test('a pattern of pins alone is what its smallest file says', () => {
  expect(readPattern('{"pins":[{"x":1,"y":2},{"x":5,"y":1},{"x":3,"y":9}]}')).toEqual({
    ok: true,
    value: three,
  });
  expect(readPattern(writePattern(emptyPattern))).toEqual({ ok: true, value: emptyPattern });
});

test('a pin is found by its id first, then by its index', () => {
  expect(
    ['p1', 'p3', '0', 2, '2', 'p4', '3', 3, -1, 0.5, '', '-1', '1.5'].map((name) => findPin(three, name)),
  ).toEqual([0, 2, 0, 2, 2, null, null, null, null, null, null, null, null]);
  expect(['2', 2, 'b', 'constructor', 'toString'].map((name) => findPin(renamed, name))).toEqual([
    0,
    2,
    1,
    2,
    null,
  ]);
});

test('pins by id know no names of the prototype', () => {
  expect(pinIndex(renamed)).toEqual(
    new Map([
      ['2', 0],
      ['b', 1],
      ['constructor', 2],
    ]),
  );
  expect(pinIndex(three).get('constructor')).toBeUndefined();
});

test('boxes', () => {
  expect(boxOfPins(three)).toEqual({ left: 1, top: 1, right: 5, bottom: 9 });
  const marked: Pattern = {
    ...three,
    marks: [{ id: 'm1', kind: 'gimp', path: [{ pin: 'p1' }, { x: -4, y: 3 }], closed: false }],
    areas: [{ id: 'a1', outline: [{ pin: 'p1' }, { pin: 'p2' }, { x: 0, y: 20 }] }],
  };
  expect(boxOfPattern(marked)).toEqual({ left: -4, top: 1, right: 5, bottom: 20 });
});

test('an anchor is its own place or its pin’s', () => {
  const pins = pinsById(three);
  expect(anchorPoint(pins, { pin: 'p2' })).toEqual({ x: 5, y: 1 });
  expect(anchorPoint(pins, { x: 7, y: 7 })).toEqual({ x: 7, y: 7 });
  expect(() => anchorPoint(pins, { pin: 'p9' })).toThrow(RangeError);
});
