import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { DraftTrouble } from '../trouble.ts';

/** The pins that plaits and leaves may begin and end at. */
export interface Pins {
  readonly ids: readonly string[];
  readonly places: readonly Point[];
  readonly index: PointIndex;
  /** How far a named place may lie from the pin it means, mm. */
  readonly reach: number;
}

export const pinsToMeet = (
  pins: readonly { readonly id: string; readonly place: Point }[],
  reach: number,
): Pins => {
  const places = pins.map(({ place }) => place);
  return { ids: pins.map(({ id }) => id), places, index: new PointIndex(places), reach };
};

/** The pin that a named place means: the nearest within reach. */
export function snapped(
  { ids, places, index, reach }: Pins,
  place: Point,
  figure: string,
): Result<string, DraftTrouble> {
  const met = index.nearest(place, reach);
  if (met !== null) return done(ids[met]!);
  const away = places.reduce((least, pin) => Math.min(least, distance(pin, place)), Infinity);
  return failed({ kind: 'recipe-figure', figure, given: away, unit: 'mm', most: reach, why: 'does-not-fit' });
}
