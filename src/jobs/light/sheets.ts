import { stretchAt, toPixel } from '#base/fit/camera.ts';
import { boxOf, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { shrink } from '#base/picture/shrink.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { Judgement } from '#craft/light/judgement.ts';
import type { Picture } from '#paper/drawing/mark.ts';
import { cardPicture } from '#paper/sheet/light/card-picture.ts';
import type { Fault } from '#paper/sheet/light/fault-signs.ts';
import { reprickMap, type Side } from '#paper/sheet/light/reprick-map.ts';
import { type Sheet, sheetContext } from '#paper/sheet/sheet.ts';
import type { Typeface } from '#paper/type/typeface.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { revisionOf } from '../revision.ts';
import { faultsOf } from './faults.ts';

export interface CheckSheetsWish {
  readonly typeface: Typeface;
  readonly paper: PaperSize;
  /** From which side the map is seen. */
  readonly side: Side;
}

/** The photo with the verdicts drawn on it, and a map true to scale to prick again by. */
export function checkSheets(
  pattern: Pattern,
  photo: GreyPicture,
  judgement: Judgement,
  { typeface, paper, side }: CheckSheetsWish,
): Sheet[] {
  const context = sheetContext(pattern.about, { typeface, revision: revisionOf(pattern) });
  const faults = faultsOf(pattern.pins, judgement);
  const maps = reprickMap(context, paper, pattern.pins, faults, side, 1);
  const { picture, toPicture } = shownPart(pattern.pins, photo, judgement);
  const onPhoto = faults
    .filter(({ kind }) => kind !== 'unseen')
    .map((fault) => seenIn(fault, judgement, toPicture));
  return [cardPicture(context, paper, picture, onPhoto, maps.length + 1), ...maps];
}

/** More pixels than this across make a file larger and nothing clearer. */
const MOST_ACROSS = 1800;

/** The part of the photo that shows the pattern, paler than it is so that signs stand out on it. */
function shownPart(
  pins: readonly Point[],
  photo: GreyPicture,
  { fit: { camera, pixelsPerMm } }: Judgement,
): { picture: Picture; toPicture: (pixel: Point) => Point } {
  const seen = pins.map((pin) => toPixel(camera, pin)).map(({ column, row }) => ({ x: column, y: row }));
  const box = growBox(boxOf(seen), 6 * pixelsPerMm);
  const left = Math.max(0, Math.floor(box.left));
  const top = Math.max(0, Math.floor(box.top));
  const width = Math.max(1, Math.min(photo.width, Math.ceil(box.right)) - left);
  const height = Math.max(1, Math.min(photo.height, Math.ceil(box.bottom)) - top);
  const grey = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    const from = (top + row) * photo.width + left;
    for (let column = 0; column < width; column++) {
      grey[row * width + column] = 140 + (115 / 255) * photo.grey[from + column]!;
    }
  }
  const factor = Math.max(1, Math.ceil(Math.max(width, height) / MOST_ACROSS));
  const small = shrink({ width, height, grey }, factor);
  return {
    picture: { form: 'raster', width: small.width, height: small.height, channels: 1, bytes: small.grey },
    toPicture: ({ x, y }) => ({
      x: (x - left + 0.5) / factor - 0.5,
      y: (y - top + 0.5) / factor - 0.5,
    }),
  };
}

function seenIn(fault: Fault, { fit: { camera } }: Judgement, toPicture: (pixel: Point) => Point): Fault {
  const place = (point: Point): Point => {
    const { column, row } = toPixel(camera, point);
    return toPicture({ x: column, y: row });
  };
  const [a, b, c, d] = stretchAt(camera, fault.at);
  const turned = (angle: number): number => {
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    return Math.atan2(c * x + d * y, a * x + b * y);
  };
  return {
    kind: fault.kind,
    at: place(fault.at),
    ...(fault.hole && { hole: place(fault.hole) }),
    ...(fault.angle !== undefined && { angle: turned(fault.angle) }),
  };
}
