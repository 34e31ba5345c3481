import { boxHolds, boxOf, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { distanceToInk } from '#paper/drawing/distance.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import { allPlaces, type PlaceOf } from '#paper/ink/places.ts';
import { anchorsOf } from '#pattern/anchors.ts';
import type { Mark } from '#pattern/pattern.ts';
import { airOf, inkOfMark } from '../../sheet/scene.ts';

/** Ids of the marks whose ink lies within `reach` of a place, the nearest first. */
export function marksNear(marks: readonly Mark[], placeOf: PlaceOf, at: Point, reach: number): string[] {
  const found: { readonly id: string; readonly away: number }[] = [];
  for (const mark of marks) {
    const places = allPlaces(anchorsOf(mark), placeOf);
    if (!places || !boxHolds(growBox(boxOf(places), reach + airOf(mark)), at)) continue;
    const away = distanceToAll(inkOfMark(mark, placeOf), at);
    if (away <= reach) found.push({ id: mark.id, away });
  }
  return found.sort((one, other) => one.away - other.away).map(({ id }) => id);
}

const distanceToAll = (ink: readonly InkMark[], at: Point): number =>
  Math.min(...ink.map((mark) => distanceToInk(mark, at)));
