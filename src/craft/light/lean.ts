import { fitCamera, fromPixel } from '#base/fit/camera.ts';
import { median } from '#base/fit/robust.ts';
import { boxOf, heightOf, widthOf } from '#base/geometry/box.ts';
import type { PixelPoint, Point } from '#base/geometry/point.ts';
import type { PictureSize } from './grow.ts';
import type { Hole } from './holes.ts';
import type { LeaningZone } from './judgement.ts';
import { aspectOf, directionOf, leanOf } from './shape.ts';

/** Fewer holes than these tell nothing of the hand. */
const FEWEST = 6;
/** Holes of a zone that are together less oval than this are round enough. */
const LEAST_ASPECT = 1.06;
/** How many times a mean must exceed its own uncertainty to be believed. */
const SURE = 3.5;

/**
 * Where on the card the needle leant, and which way. The pattern is taken in nine parts, and the shapes of the holes of each
 * are put together as directions of double the angle, so that ovals that lie any which way cancel out. A smeared hole
 * also has its middle half a smear off its place; but holes that all stray together pull the camera's fit along, so that
 * the camera is fitted once more by the holes of the upright parts alone to see it.
 */
export function leaningZones(
  pins: readonly Point[],
  at: readonly (Hole | null)[],
  picture: PictureSize,
  cardThickness: number | undefined,
): LeaningZone[] {
  const parts = partsOf(pins, at);
  const leaning = parts.flatMap((part) => {
    const lean = leanOfPart(part);
    return lean === null ? [] : [{ part, lean }];
  });
  if (leaning.length === 0) return [];
  const upright = parts
    .filter((part) => leaning.every((one) => one.part !== part))
    .flatMap(({ holes }) => holes);
  const fit =
    upright.length < FEWEST_UPRIGHT
      ? null
      : fitCamera(
          upright.map(({ pin }) => pin),
          upright.map(({ hole }) => hole.spot),
          picture,
        );
  return leaning.map(({ part: { across, down, holes }, lean: { aspect, angle } }) => {
    const diameter = median(holes.map(({ hole }) => hole.diameter));
    return {
      across,
      down,
      holes: holes.length,
      aspect,
      angle: (angle * 180) / Math.PI,
      towards: fit && straying(holes, angle, fromPixel(fit.camera)),
      lean: cardThickness ? leanOf(diameter, aspect, cardThickness) : null,
    };
  });
}

/** Fewer holes in upright parts cannot tell where those of the others ought to be. */
const FEWEST_UPRIGHT = 60;

interface Part {
  readonly across: LeaningZone['across'];
  readonly down: LeaningZone['down'];
  readonly holes: readonly { readonly pin: Point; readonly hole: Hole }[];
}

function partsOf(pins: readonly Point[], at: readonly (Hole | null)[]): Part[] {
  const box = boxOf(pins);
  const third = (value: number, from: number, size: number): number =>
    Math.min(2, Math.floor((3 * (value - from)) / (size || 1)));
  return (['top', 'middle', 'bottom'] as const).flatMap((down, row) =>
    (['left', 'middle', 'right'] as const).map((across, column) => ({
      across,
      down,
      holes: pins.flatMap((pin, index) => {
        const hole = at[index];
        const inside =
          third(pin.x, box.left, widthOf(box)) === column && third(pin.y, box.top, heightOf(box)) === row;
        return hole && inside ? [{ pin, hole }] : [];
      }),
    })),
  );
}

function leanOfPart({ holes }: Part): { readonly aspect: number; readonly angle: number } | null {
  if (holes.length < FEWEST) return null;
  const ovals = holes.map(({ hole }) => {
    const stretch = Math.log(aspectOf(hole.shape));
    const angle = 2 * directionOf(hole.shape);
    return { x: stretch * Math.cos(angle), y: stretch * Math.sin(angle) };
  });
  const mean = meanOf(ovals);
  const size = Math.hypot(mean.x, mean.y);
  const aspect = Math.exp(size);
  if (aspect < LEAST_ASPECT || size < SURE * uncertainty(ovals, mean)) return null;
  return { aspect, angle: Math.atan2(mean.y, mean.x) / 2 };
}

/** Which way along an axis the holes of a part stray together; null where that is no more than the fit may err. */
function straying(holes: Part['holes'], angle: number, read: (pixel: PixelPoint) => Point): Point | null {
  const axis = { x: Math.cos(angle), y: Math.sin(angle) };
  const along = median(
    holes.map(({ pin, hole }) => {
      const place = read(hole.spot);
      return (place.x - pin.x) * axis.x + (place.y - pin.y) * axis.y;
    }),
  );
  if (Math.abs(along) < LEAST_STRAYING) return null;
  return { x: axis.x * Math.sign(along), y: axis.y * Math.sign(along) };
}

/** A camera fitted by one part of a card is off by some hundredths of a millimetre in another, mm. */
const LEAST_STRAYING = 0.025;

function meanOf(points: readonly Point[]): Point {
  let [x, y] = [0, 0];
  for (const point of points) {
    x += point.x / points.length;
    y += point.y / points.length;
  }
  return { x, y };
}

/** Standard error of a mean of plane vectors. */
function uncertainty(points: readonly Point[], mean: Point): number {
  let squares = 0;
  for (const { x, y } of points) squares += (x - mean.x) ** 2 + (y - mean.y) ** 2;
  return Math.sqrt(squares / (points.length * Math.max(1, points.length - 1)));
}
