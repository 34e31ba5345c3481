import type { Point } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';
import { areaAt } from '#craft/mark/area-at.ts';
import { boundsOf, type Reach } from '#craft/mark/bounds.ts';
import { areaInWords, areaTroubleInWords } from '#jobs/words/area.ts';
import { allPlaces, type PlaceOf } from '#paper/ink/places.ts';
import type { Anchor, Area, Pattern } from '#pattern/pattern.ts';

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

/** What a touch inside of lines finds. */
export type Touched =
  | { readonly outline: readonly Anchor[]; readonly note: string | null }
  | { readonly outline: null; readonly note: string };

export function outlineAt(pattern: Pattern, reach: Reach, at: Point): Touched {
  const found = areaAt(boundsOf(pattern, reach), at);
  if (!found.ok) return { outline: null, note: areaTroubleInWords(found.trouble) };
  const { outline, crossings, islands } = found.value;
  return { outline, note: areaInWords({ crossings: crossings.length, islands }) };
}
