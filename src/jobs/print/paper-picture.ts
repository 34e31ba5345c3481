import { type Affine, applyAffine, determinant, invert } from '#base/geometry/affine.ts';
import { type Box, boxOf, growBox, heightOf, widthOf } from '#base/geometry/box.ts';
import type { PixelPicture } from '#base/picture/warp.ts';
import { warp } from '#base/picture/warp.ts';
import type { WarpControl } from '#base/picture/warp-mesh.ts';
import { whitenGround } from '#base/picture/whiten.ts';
import type { Progress } from '#base/progress.ts';
import { MM_PER_INCH } from '#base/units/length.ts';
import type { PrintOptions } from '#paper/sheet/options.ts';
import type { PaperPicture, Pattern } from '#pattern/pattern.ts';

/** How much of the paper round the pins is shown, mm. */
const MARGIN = 10;
/** Finer pictures only make larger files. */
const MOST_DPI = 300;

/**
 * The paper's own picture, to be printed under exact dots: warped so that its markings go with the pins wherever
 * straightening moved these, on white paper, and no larger than the pins with a margin round them. Null where the pattern was not traced
 * from a picture or has no pins. `pixels` is that picture as a person sees it upright; throws where its size is another.
 */
export function paperUnderDots(
  { paper, pins }: Pattern,
  pixels: PixelPicture,
  progress: Progress,
): NonNullable<PrintOptions['picture']> | null {
  if (!paper || pins.length === 0) return null;
  if (pixels.width !== paper.width || pixels.height !== paper.height) {
    const [is, want] = [`${pixels.width} x ${pixels.height}`, `${paper.width} x ${paper.height}`];
    throw new RangeError(`paperUnderDots: the picture has ${is} pixels, the pattern speaks of ${want}`);
  }
  const { box, dpi } = frameOf(paper, pins);
  const warped = warp(pixels, controlsOf(paper, pins), paper.toPattern, { box, dpi }, progress);
  return { picture: { form: 'raster', ...whitenGround(warped) }, place: placeOf(box, dpi) };
}

/** The same in size and place with nothing on it: enough to plan sheets by, and made at once. */
export function blankUnderDots({ paper, pins }: Pattern): NonNullable<PrintOptions['picture']> | null {
  if (!paper || pins.length === 0) return null;
  const { box, dpi } = frameOf(paper, pins);
  const pixels = (length: number): number => Math.max(1, Math.round((length * dpi) / MM_PER_INCH));
  const [width, height] = [pixels(widthOf(box)), pixels(heightOf(box))];
  const picture = { form: 'raster', width, height, channels: 1, bytes: new Uint8Array() } as const;
  return { picture, place: placeOf(box, dpi) };
}

function frameOf({ toPattern }: PaperPicture, pins: Pattern['pins']): { box: Box; dpi: number } {
  const dpi = Math.min(MOST_DPI, MM_PER_INCH / Math.sqrt(Math.abs(determinant(toPattern))));
  return { dpi, box: growBox(boxOf(pins), MARGIN) };
}

/** Each pin that was measured on the paper: where it stood there, in pixels, and where it stands now. */
function controlsOf({ toPattern, stood }: PaperPicture, pins: Pattern['pins']): WarpControl[] {
  const toPixels = invert(toPattern);
  return pins.flatMap((pin): WarpControl[] => {
    // A pin that was proposed, or that a person put up later, has never been on the paper.
    const was = stood?.[pin.id] ?? (pin.diameter === undefined ? null : pin);
    if (was === null) return [];
    const { x, y } = applyAffine(toPixels, was);
    return [{ from: { column: x, row: y }, to: { x: pin.x, y: pin.y } }];
  });
}

function placeOf({ left, top }: Box, dpi: number): Affine {
  const pixel = MM_PER_INCH / dpi;
  return { a: pixel, b: 0, c: 0, d: pixel, e: left + pixel / 2, f: top + pixel / 2 };
}
