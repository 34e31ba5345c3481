import { expect, test } from 'vitest';
import { applyChange, undoChange } from '#pattern/change/change.ts';
import { addPin, updatePins, vouchedFor } from '#pattern/change/edit-pins.ts';
import { patternFromPins } from '#pattern/pins.ts';

const pattern = patternFromPins([
  { x: 1, y: 2 },
  { x: 3, y: 4 },
]);

test('a pin is added after all others, under an id that none has, and taken back by undoing', () => {
  const renamed = { ...pattern, pins: [pattern.pins[0]!, { id: 'p3', x: 3, y: 4 }] };
  const { change, id } = addPin(renamed, { x: 5, y: 6 });
  expect(id).toBe('p4');
  const added = applyChange(renamed, change);
  expect(added.pins.at(-1)).toEqual({ id: 'p4', x: 5, y: 6 });
  expect(applyChange(added, undoChange(change))).toEqual(renamed);
});

test('pins get new records, in whatever order they are given', () => {
  const moved = [
    { id: 'p2', x: 3.5, y: 4 },
    { id: 'p1', x: 1.5, y: 2 },
  ];
  const change = updatePins(pattern, moved);
  expect(applyChange(pattern, change).pins).toEqual([moved[1], moved[0]]);
  expect(() => updatePins(pattern, [{ id: 'p9', x: 0, y: 0 }])).toThrow('p9');
});

test('a pin that a person vouches for is in no doubt', () => {
  expect(vouchedFor({ id: 'p1', x: 1, y: 2, diameter: 0.5, confidence: 0.3, doubt: ['faint'] })).toEqual({
    id: 'p1',
    x: 1,
    y: 2,
    diameter: 0.5,
  });
});
