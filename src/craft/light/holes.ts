import { type Camera, fromPixel, stretchAt } from '#base/fit/camera.ts';
import { median } from '#base/fit/robust.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { around, neighbourhoodOf } from './neighbours.ts';
import { aspectOf, type Moments, onSheet, relativeTo } from './shape.ts';
import { diameterOf, type Spot } from './spots.ts';

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
/** Holes by which it is told what a round one looks like about there. */
const COMPARED = 24;

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

/** Every hole's shape against the middle shape of those about it: thick card makes all narrower the way it is tilted. */
function compared(at: readonly (Hole | null)[]): (Hole | null)[] {
  const here = at.flatMap((hole, pin) => (hole === null ? [] : [{ hole, pin }]));
  if (here.length < 2) return [...at];
  const neighbourhood = neighbourhoodOf(here.map(({ hole }) => hole));
  const result = [...at];
  here.forEach(({ hole, pin }, k) => {
    const near = [k, ...around(neighbourhood, k, COMPARED)].map((other) => unit(here[other]!.hole.shape));
    const usual = {
      xx: median(near.map(({ xx }) => xx)),
      xy: median(near.map(({ xy }) => xy)),
      yy: median(near.map(({ yy }) => yy)),
    };
    result[pin] = { ...hole, shape: relativeTo(hole.shape, usual) };
  });
  return result;
}

/** The shape alone, without the size. */
function unit({ xx, xy, yy }: Moments): Moments {
  const size = Math.sqrt(Math.max(1e-12, xx * yy - xy * xy));
  return { xx: xx / size, xy: xy / size, yy: yy / size };
}

export const aspectOfHole = ({ shape }: Hole): number => aspectOf(shape);
