import { expect, test } from 'vitest';
import type { Anchor } from '#pattern/pattern.ts';
import { finish, grow, isSameLine, marksOf } from '../../src/bench/stages/mark/course.ts';
import type { CourseKind } from '../../src/bench/stages/mark/wishes.ts';

const pin = (id: string): Anchor => ({ pin: id });
const free = { x: 1, y: 2 };

/** What touches one after the other make of a marking. */
function touched(kind: CourseKind, ...anchors: readonly Anchor[]) {
  let path: readonly Anchor[] = [];
  for (const anchor of anchors) {
    const grown = grow(kind, path, anchor, 0.5);
    if (grown.at !== 'grows') return grown;
    path = grown.path;
  }
  return finish(kind, path);
}

test('the last pin again ends it, and so does saying that it is done', () => {
  const path = [pin('a'), pin('b'), pin('c')];
  expect(touched('line', ...path, pin('c'))).toEqual({ at: 'whole', path, joined: false });
  expect(touched('line', ...path)).toEqual({ at: 'whole', path, joined: false });
  expect(touched('gimp', ...path, free, { x: 1.3, y: 2.2 })).toMatchObject({
    at: 'whole',
    path: [...path, free],
  });
});

test('a gimp and an area are joined at their first pin; lines and plaits may pass it again', () => {
  const round = [pin('a'), pin('b'), pin('c'), pin('a')];
  for (const kind of ['gimp', 'area'] as const) {
    expect(touched(kind, ...round)).toEqual({ at: 'whole', path: round.slice(0, 3), joined: true });
  }
  expect(touched('line', ...round)).toEqual({ at: 'whole', path: round, joined: false });
  expect(touched('plait', ...round)).toEqual({ at: 'whole', path: round, joined: false });
  expect(touched('gimp', pin('a'), pin('b'), pin('a'), pin('c'))).toMatchObject({ joined: false });
});

test('an arrow is whole with its second end', () => {
  expect(touched('arrow', free, pin('a'), pin('b'))).toMatchObject({ at: 'whole', path: [free, pin('a')] });
});

test.each([
  ['a line that leaves its pins', touched('line', pin('a'), free)],
  ['a plait that begins beside a pin', touched('plait', free)],
  ['a plait that ends beside a pin', touched('plait', pin('a'), free)],
  ['one end only', touched('gimp', pin('a'))],
  ['the only end twice', touched('line', pin('a'), pin('a'))],
  ['an area of two corners', touched('area', pin('a'), pin('b'))],
])('refused in a sentence: %s', (_, grown) => {
  expect(grown).toMatchObject({ at: 'refused', why: expect.stringMatching(/^[A-Z].*\.$/) });
});

test('a plait goes through places between its ends', () => {
  expect(touched('plait', pin('a'), free, pin('b'))).toMatchObject({ at: 'whole' });
});

test('a working line is kept piece by piece, and is the same either way round', () => {
  const [one, other, ...none] = marksOf('line', [pin('a'), pin('b'), pin('a')], { joined: false, width: 1 });
  expect(none).toEqual([]);
  expect(one).toEqual({ kind: 'line', from: pin('a'), to: pin('b') });
  expect(isSameLine(one!, other!)).toBe(true);
  expect(isSameLine(one!, { kind: 'line', from: pin('a'), to: pin('c') })).toBe(false);
  expect(isSameLine(one!, { kind: 'arrow', from: pin('a'), to: pin('b') })).toBe(false);
});
