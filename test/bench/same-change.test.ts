import { expect, test } from 'vitest';
import { sameChange } from '../../src/bench/store/same-change.ts';
import { changeBetween } from '../../src/pattern/change/between.ts';
import { patternFromPins } from '../../src/pattern/pins.ts';

const PINS = 5_000;
const before = patternFromPins(Array.from({ length: PINS }, (_, at) => ({ x: at, y: 0 })));
const movedBut = (still: number) => ({
  ...before,
  pins: before.pins.map((pin, at) => (at === still ? pin : { ...pin, y: 1 })),
});

test('a long change is the same as its copy, and another where one pin of it is another', async () => {
  const change = changeBetween(before, movedBut(-1));
  expect(change.pins?.updated).toHaveLength(PINS);
  const { updated } = change.pins!;
  const withLast = (last: (typeof updated)[number]) => ({
    pins: { ...change.pins!, updated: [...updated.slice(0, -1), last] },
  });
  const [from, to] = updated.at(-1)!;
  expect(await sameChange(change, structuredClone(change))).toBe(true);
  expect(await sameChange(change, withLast([from, { ...to, x: to.x + 1 }]))).toBe(false);
  expect(await sameChange(change, changeBetween(before, movedBut(PINS - 1)))).toBe(false);
  expect(await sameChange(change, {})).toBe(false);
  expect(await sameChange(change, { ...change, unit: ['mm', 'px'] })).toBe(false);
  expect(await sameChange(change, undefined)).toBe(false);
  expect(await sameChange(undefined, undefined)).toBe(true);
});
