import { expect, test } from 'vitest';
import type { Point } from '#base/geometry/point.ts';
import { operationsInOrder } from '#craft/route/machine/operations.ts';

const square = (x: number, y: number, side: number): Point[] => [
  { x, y },
  { x: x + side, y },
  { x: x + side, y: y + side },
  { x, y: y + side },
];

test('holes first, then inner cuts, the outline last', () => {
  const holes = [
    { x: 20, y: 20 },
    { x: 80, y: 80 },
  ];
  const done = operationsInOrder(holes, [1, 0], [square(0, 0, 100), square(60, 10, 10), square(10, 10, 5)]);
  expect(done.map((each) => each.kind)).toEqual(['hole', 'hole', 'inner', 'inner', 'outline']);
  expect(done.slice(0, 2)).toEqual([
    { kind: 'hole', hole: 1 },
    { kind: 'hole', hole: 0 },
  ]);
  // From the last hole at (20, 20) the nearest corner is the inner square's at (15, 15).
  expect(done[2]).toEqual({ kind: 'inner', cut: 2, start: 2 });
});

test('what lies inside a cut is made before it', () => {
  const rings = [square(0, 0, 100), square(10, 10, 80), square(20, 20, 60), square(30, 30, 40)];
  const done = operationsInOrder([], [], rings);
  expect(done.map((each) => each.kind !== 'hole' && each.cut)).toEqual([3, 2, 1, 0]);
});

test('one part after the other, each with all that is its own', () => {
  const cuts = [square(0, 0, 40), square(100, 0, 40), square(110, 10, 5), square(10, 10, 5)];
  const holes = [
    { x: 130, y: 30 },
    { x: 30, y: 30 },
    { x: 70, y: 20 },
  ];
  const done = operationsInOrder(holes, [0, 1, 2], cuts);
  // The hole that lies in no part comes first; both parts follow, the nearer first.
  expect(
    done.map((each) => (each.kind === 'hole' ? `hole ${each.hole}` : `${each.kind} ${each.cut}`)),
  ).toEqual(['hole 2', 'hole 1', 'inner 3', 'outline 0', 'hole 0', 'inner 2', 'outline 1']);
});

test('nothing to do is no trouble', () => {
  expect(operationsInOrder([], [], [])).toEqual([]);
  expect(operationsInOrder([], [], [[]])).toEqual([]);
});
