import { add, type Point, scale } from '#base/geometry/point.ts';
import type { Again } from '#pattern/recipe/tape.ts';

/** Where a place comes to lie when all is drawn for the `copy`th time, from 0. */
export function inCopy(again: Again | undefined, copy: number, place: Point): Point {
  if (again === undefined || copy === 0) return place;
  if (again.kind === 'step') return add(place, scale(again.step, copy));
  const angle = (2 * Math.PI * copy) / again.count;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const x = place.x - again.centre.x;
  const y = place.y - again.centre.y;
  return { x: again.centre.x + cos * x - sin * y, y: again.centre.y + sin * x + cos * y };
}

/** What an id says of the copy it belongs to: nothing where there is one only. */
export const copyName = (again: Again | undefined, copy: number): string =>
  again === undefined ? '' : `c${copy + 1}`;
