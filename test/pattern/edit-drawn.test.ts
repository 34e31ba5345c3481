import { expect, test } from 'vitest';
import { applyChange } from '#pattern/change/change.ts';
import { addDrawn, removeDrawn, updateDrawn } from '#pattern/change/edit-drawn.ts';
import type { Mark, Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { checkChangeLaws } from '../support/change-laws.ts';

const number = (id: string, value: number): Mark => ({ id, kind: 'number', at: { pin: 'p1' }, value });
const pattern: Pattern = {
  ...patternFromPins([
    { x: 1, y: 2 },
    { x: 3, y: 4 },
  ]),
  marks: [number('m2', 1), number('first', 2)],
};

test('marks come after all others, under ids that none has, are changed in their place, and go', () => {
  const added = addDrawn(pattern, 'marks', [
    { kind: 'line', from: { pin: 'p1' }, to: { pin: 'p2' } },
    { kind: 'picot', at: { pin: 'p2' } },
  ]);
  expect(added.ids).toEqual(['m3', 'm4']);
  const two = applyChange(pattern, added.change);
  const changed = updateDrawn(two, 'marks', number('first', 9));
  const three = applyChange(two, changed);
  const gone = removeDrawn(three, 'marks', 'm2');
  checkChangeLaws(pattern, [added.change, changed, gone], {
    ...pattern,
    marks: [
      number('first', 9),
      { id: 'm3', kind: 'line', from: { pin: 'p1' }, to: { pin: 'p2' } },
      { id: 'm4', kind: 'picot', at: { pin: 'p2' } },
    ],
  });
});

test('areas have ids of their own, and adding nothing changes nothing', () => {
  const outline = [{ pin: 'p1' }, { pin: 'p2' }, { x: 0, y: 0 }];
  const { change, ids } = addDrawn(pattern, 'areas', [{ outline, stitch: 'cloth' }]);
  expect(ids).toEqual(['a1']);
  checkChangeLaws(pattern, [change], { ...pattern, areas: [{ id: 'a1', outline, stitch: 'cloth' }] });
  expect(addDrawn(pattern, 'marks', [])).toEqual({ change: {}, ids: [] });
});

test('an id that is not there is a fault of our own', () => {
  expect(() => updateDrawn(pattern, 'marks', number('m9', 1))).toThrow('m9');
  expect(() => removeDrawn(pattern, 'areas', 'a1')).toThrow('a1');
});
