import type { Point } from '#base/geometry/point.ts';
import type { Anchor, Pattern } from '#pattern/pattern.ts';

/** Where anchors lie; undefined where one names a pin that the pattern does not have. */
export type PlaceOf = (anchor: Anchor) => Point | undefined;

export function placesOf(pattern: Pattern): PlaceOf {
  let pins: ReadonlyMap<string, Point> | null = null;
  return (anchor) => {
    if (!('pin' in anchor)) return anchor;
    pins ??= new Map(pattern.pins.map((pin) => [pin.id, pin]));
    return pins.get(anchor.pin);
  };
}

/** All of the places, or undefined where one of them is unknown. */
export function allPlaces(anchors: readonly Anchor[], placeOf: PlaceOf): Point[] | undefined {
  const places = anchors.map(placeOf);
  return places.every((place) => place !== undefined) ? places : undefined;
}
