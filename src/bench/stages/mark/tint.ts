import type { Point } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';
import { allPlaces, type PlaceOf } from '#paper/ink/places.ts';
import type { Area } from '#pattern/pattern.ts';

/** How an area is worked and tinted. */
export type Tint = Pick<Area, 'stitch' | 'name' | 'tint'>;

/** Ids of the areas that hold a place, the one on top first. */
export const areasAt = (areas: readonly Area[], placeOf: PlaceOf, at: Point): string[] =>
  areas
    .filter(({ outline }) => {
      const corners = allPlaces(outline, placeOf);
      return corners !== undefined && isInside(corners, at);
    })
    .map(({ id }) => id)
    .reverse();
