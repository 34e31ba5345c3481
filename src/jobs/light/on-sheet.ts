import { affineFit } from '#base/fit/affine.ts';
import { type Camera, toPixel } from '#base/fit/camera.ts';
import type { Affine } from '#base/geometry/affine.ts';
import { boxOf, growBox, heightOf, widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { type PixelPicture, warp } from '#base/picture/warp.ts';
import type { WarpControl } from '#base/picture/warp-mesh.ts';
import type { Progress } from '#base/progress.ts';
import { MM_PER_INCH } from '#base/units/length.ts';
import type { Judgement } from '#craft/light/judgement.ts';

/** The photo laid flat on the sheet: pixel centres are whole, and `toPattern` maps them to the pattern's mm. */
export interface PhotoOnSheet {
  readonly picture: PixelPicture;
  readonly toPattern: Affine;
}

/** Card about the outermost pins that is shown too, mm. */
const AROUND = 6;
/** More pixels than this along a side make every frame slower and nothing clearer. */
const MOST_SIDE = 3000;
/** In so many steps along each side the camera's bend and tilt are followed. */
const STEPS = 32;

/** The photo as a scan from the front would show the card, so that every hole lies where its pin is on the sheet. */
export function photoOnSheet(
  pins: readonly Point[],
  photo: GreyPicture,
  { fit: { camera, pixelsPerMm } }: Judgement,
  progress: Progress,
): PhotoOnSheet {
  const box = growBox(boxOf(pins), AROUND);
  const perMm = Math.min(pixelsPerMm, MOST_SIDE / Math.max(widthOf(box), heightOf(box)));
  const controls = Array.from({ length: (STEPS + 1) ** 2 }, (_, k) => {
    const x = box.left + (widthOf(box) * (k % (STEPS + 1))) / STEPS;
    const y = box.top + (heightOf(box) * Math.floor(k / (STEPS + 1))) / STEPS;
    return controlAt(camera, { x, y });
  });
  const toSheet = affineFit(
    controls.map(({ from }) => ({ x: from.column, y: from.row })),
    controls.map(({ to }) => to),
  );
  if (!toSheet) throw new RangeError('photoOnSheet: the camera sees the sheet edge on');
  const grey: PixelPicture = { width: photo.width, height: photo.height, channels: 1, bytes: photo.grey };
  const picture = warp(grey, controls, toSheet, { box, dpi: perMm * MM_PER_INCH }, progress);
  const [across, down] = [widthOf(box) / picture.width, heightOf(box) / picture.height];
  const toPattern = { a: across, b: 0, c: 0, d: down, e: box.left + across / 2, f: box.top + down / 2 };
  return { picture, toPattern };
}

function controlAt(camera: Camera, to: Point): WarpControl {
  return { from: toPixel(camera, to), to };
}
