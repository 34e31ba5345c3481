import { expect } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { anchorPoint, anchorsOf } from '#pattern/anchors.ts';
import { findBrokenReference } from '#pattern/file/references.ts';
import type { Anchor, Pattern } from '#pattern/pattern.ts';
import { pinsById } from '#pattern/pins.ts';

/** Every place that a pattern names, in order: pins, anchors of marks and areas, the repeat's step, the paper's corners. */
export function placesOf(pattern: Pattern): Point[] {
  const byId = pinsById(pattern);
  const placeOf = (anchor: Anchor): Point => anchorPoint(byId, anchor);
  const { repeat, paper } = pattern;
  return [
    ...pattern.pins,
    ...pattern.marks.flatMap(anchorsOf).map(placeOf),
    ...pattern.areas.flatMap(({ outline }) => outline).map(placeOf),
    ...(repeat ? [repeat.step] : []),
    ...(paper ? [{ x: paper.toPattern.e, y: paper.toPattern.f }, ...Object.values(paper.stood ?? {})] : []),
  ];
}

/** Two patterns name the same places within `tolerance`, and say the same of them. */
export function expectSame(one: Pattern, other: Pattern, tolerance: number): void {
  const [places, others] = [placesOf(one), placesOf(other)];
  expect(others.length).toBe(places.length);
  const off = places.reduce((most, place, at) => Math.max(most, distance(place, others[at]!)), 0);
  expect(off).toBeLessThanOrEqual(tolerance);
  expect(meaning(other)).toEqual(meaning(one));
  expect(findBrokenReference(other)).toBeNull();
}

/** All of a pattern but its lengths, its sheet and its recipe, which do not go along when it is moved. */
export const meaning = ({ sheet: _, recipe: __, ...pattern }: Pattern): unknown =>
  JSON.parse(JSON.stringify(pattern, (_key, value) => (typeof value === 'number' ? 0 : value)));
