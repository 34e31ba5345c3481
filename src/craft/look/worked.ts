import { boxHolds, boxOf } from '#base/geometry/box.ts';
import { type Point, subtract } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';
import type { Survey } from './survey.ts';

/**
 * Tells places well within an area that is worked in a stitch and holds no pin: in cloth and half stitch the workers
 * turn at the pins of its edges, and none are lacking between them, however small the area (common practice, no source).
 */
export function workedPlaces({ pattern, distinct, spacing, placeOf }: Survey): (place: Point) => boolean {
  const margin = WELL_WITHIN * spacing;
  const empty = pattern.areas
    .filter(({ stitch }) => stitch === 'cloth' || stitch === 'half' || stitch === 'whole')
    .map(({ outline }) => outline.map(placeOf))
    .map((outline) => ({ outline, box: boxOf(outline) }))
    .map((area) => ({ ...area, isWithin: (place: Point) => isWellInside(area.outline, place, margin) }));
  const holdsPins = ({ box, isWithin }: (typeof empty)[number]): boolean =>
    distinct.some((pin) => boxHolds(box, pattern.pins[pin]!) && isWithin(pattern.pins[pin]!));
  return (place) =>
    empty.some((area) => boxHolds(area.box, place) && area.isWithin(place) && !holdsPins(area));
}

/** A pin of the outline itself stands nearer to it than this part of the spacing. Our own choice. */
const WELL_WITHIN = 0.3;

function isWellInside(outline: readonly Point[], place: Point, margin: number): boolean {
  return (
    isInside(outline, place) &&
    outline.every((corner, k) => offSide(corner, outline[(k + 1) % outline.length]!, place) > margin)
  );
}

/** Distance of a place from the side between two corners. */
function offSide(from: Point, to: Point, place: Point): number {
  const [side, way] = [subtract(to, from), subtract(place, from)];
  const square = side.x * side.x + side.y * side.y;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, (side.x * way.x + side.y * way.y) / square));
  return Math.hypot(way.x - share * side.x, way.y - share * side.y);
}
