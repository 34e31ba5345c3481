import { expect, test } from 'vitest';
import type { Pattern, Pin } from '#pattern/pattern.ts';
import {
  carriedOver,
  doneIn,
  firstOpen,
  firstPlace,
  placeSchema,
  withDone,
} from '../../src/bench/stages/prick/place.ts';
import { openMemory } from '../../src/bench/store/database.ts';
import { createDesign } from '../../src/bench/store/designs.ts';
import { clearAway, putBack, setAside } from '../../src/bench/store/remove.ts';
import { readSetting, settingOf, writeSetting } from '../../src/bench/store/settings.ts';

const pin = (id: string, x: number, y = 0): Pin => ({ id, x, y });
const patternOf = (pins: readonly Pin[]): Pattern => ({
  unit: 'mm',
  about: {},
  pins,
  runs: [],
  marks: [],
  areas: [],
  sizes: {},
  scale: { from: 'none' },
});

test('a place knows which pins it belongs to, and nothing else of the pattern', () => {
  const pattern = patternOf([pin('a', 0), pin('b', 4)]);
  const place = firstPlace(pattern, null);
  expect(firstPlace({ ...pattern, about: { name: 'other' } }, null).pins).toBe(place.pins);
  expect(firstPlace(patternOf([pin('a', 0), pin('b', 4.1)]), null).pins).not.toBe(place.pins);
  expect(firstPlace(patternOf([pin('b', 4), pin('a', 0)]), null).pins).not.toBe(place.pins);
});

test('beginning anew keeps how the guide is looked at', () => {
  const pattern = patternOf([pin('a', 0)]);
  const place = { ...firstPlace(pattern, null), side: 'back', large: true, step: 1 } as const;
  expect(firstPlace(pattern, place)).toEqual({ ...place, step: 0, done: [] });
});

test('a made hole is carried over where a pin still stands on it, whatever it is called now', () => {
  const before = patternOf([pin('a', 0), pin('b', 4), pin('c', 8), pin('d', 12)]);
  const place = withDone(firstPlace(before, null), before, new Set([0, 1, 2]));
  // a is gone, b has moved away, c is another pin on the same hole but for a hair, and d was never made
  const after = patternOf([pin('d', 12), pin('b', 5), pin('x', 8.1)]);
  const carried = carriedOver(place, after);
  expect([...doneIn(carried)]).toEqual([2]);
  expect(carried.pins).toBe(firstPlace(after, null).pins);
});

test('the first open step is the first with a hole to make', () => {
  const passes = [{ order: [0, 1] }, { order: [2] }];
  expect(firstOpen(passes, new Set())).toBe(0);
  expect(firstOpen(passes, new Set([0]))).toBe(0);
  expect(firstOpen(passes, new Set([0, 1]))).toBe(1);
  expect(firstOpen(passes, new Set([0, 1, 2]))).toBe(2);
});

test('a pattern that is cleared away takes its place with it, and no other, and not while it can be put back', async () => {
  const database = await openMemory();
  const pattern = patternOf([pin('a', 0), pin('b', 4)]);
  const place = firstPlace(pattern, null);
  const made = () => createDesign(database, { pattern, pictures: new Map() }, 'Two pins');
  const [one, other] = [await made(), await made()];
  for (const id of [one, other]) await writeSetting(database, settingOf(id, 'pricking'), place);
  const kept = (id: string) => readSetting(database, settingOf(id, 'pricking'), placeSchema);
  await setAside(database, one, 0);
  await putBack(database, one);
  expect(await kept(one)).toEqual(place);
  await setAside(database, one, 0);
  await clearAway(database, one);
  expect(await kept(one)).toBeNull();
  expect(await kept(other)).toEqual(place);
});
