import { type Camera, fromPixel, stretchAt } from '#base/fit/camera.ts';
import { median } from '#base/fit/robust.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { type Moments, onSheet, relativeTo } from './shape.ts';
import { diameterOf, type Spot } from './spots.ts';
import { usualShape } from './usual-shape.ts';

/** A spot as a hole of the card: in mm on the pattern, its shape with the camera's tilt taken out. */
export interface Hole extends Point {
  readonly spot: Spot;
  readonly diameter: number;
  readonly shape: Moments;
}

/** The hole at each pin, and the holes that no pin has. */
export interface Holes {
  readonly at: readonly (Hole | null)[];
  readonly left: readonly Hole[];
  /** Diameter of most holes at pins, mm. */
  readonly diameter: number;
}

/** A hole further from a pin than this is not that pin's, mm: the hand strays by half a millimetre at worst. */
const FARTHEST = 0.62;
/** A spot smaller than this share of a hole is a flaw in the card. */
const FLAW = 0.6;
/** Gives every hole to the pin that it was meant for, nearest pairs first, and measures it on the pattern. */
export function holesAt(spots: readonly Spot[], pins: readonly Point[], camera: Camera): Holes {
  const read = fromPixel(camera);
  const holes = spots.map((spot): Hole => {
    const place = read(spot);
    const stretch = stretchAt(camera, place);
    const perMm2 = Math.abs(stretch[0] * stretch[3] - stretch[1] * stretch[2]);
    return { ...place, spot, diameter: diameterOf(spot) / Math.sqrt(perMm2), shape: onSheet(spot, stretch) };
  });
  const given = assigned(holes, pins);
  const diameter = median(given.flatMap((k) => (k === null ? [] : [holes[k]!.diameter])));
  const isHole = ({ diameter: own }: Hole): boolean => own >= FLAW * diameter;
  const proper = holes.filter(isHole);
  const at = assigned(proper, pins).map((k) => (k === null ? null : proper[k]!));
  const taken = new Set(at);
  return { at: compared(at), left: proper.filter((hole) => !taken.has(hole)), diameter };
}

function assigned(holes: readonly Hole[], pins: readonly Point[]): (number | null)[] {
  const index = new PointIndex(holes);
  const pairs = pins.flatMap((pin, p) =>
    index
      .within(pin, FARTHEST)
      .map((h) => ({ p, h, away: Math.hypot(holes[h]!.x - pin.x, holes[h]!.y - pin.y) })),
  );
  pairs.sort((one, other) => one.away - other.away || one.p - other.p || one.h - other.h);
  const at: (number | null)[] = pins.map(() => null);
  const taken = new Set<number>();
  for (const { p, h } of pairs) {
    if (at[p] !== null || taken.has(h)) continue;
    at[p] = h;
    taken.add(h);
  }
  return at;
}

/** Every hole's shape with that of a round one taken out: thick card makes all narrower the way it is tilted. */
function compared(at: readonly (Hole | null)[]): (Hole | null)[] {
  const usual = usualShape(at.filter((hole) => hole !== null));
  return at.map((hole) => hole && { ...hole, shape: relativeTo(hole.shape, usual(hole)) });
}
