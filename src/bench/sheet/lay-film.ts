import type { Film } from '#base/colour/film.ts';
import type { Box } from '#base/geometry/box.ts';
import { seenValues } from '#paper/sheet/film-picture.ts';

/** A part of a canvas in its own whole pixels. */
export interface PixelFrame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** How an upright map goes from the pattern to pixels, as a brush tells it. */
type Map = Pick<DOMMatrix, 'a' | 'd' | 'e' | 'f'>;

/** All pixels that a box touches. */
export function pixelsOf({ left, top, right, bottom }: Box, { a, d, e, f }: Map): PixelFrame {
  const [from, to] = [Math.floor(left * a + e), Math.ceil(right * a + e)];
  const [first, last] = [Math.floor(top * d + f), Math.ceil(bottom * d + f)];
  return { left: from, top: first, width: to - from, height: last - first };
}

/** The box that just holds those pixels. */
export const boxOfPixels = ({ left, top, width, height }: PixelFrame, { a, d, e, f }: Map): Box => ({
  left: (left - e) / a,
  right: (left + width - e) / a,
  top: (top - f) / d,
  bottom: (top + height - f) / d,
});

/** Pixels that are changed before the page may see to other things: a millisecond or so. */
const STRIP = 120_000;

/** Changes what is painted in a frame to what is seen of it through the film, a strip at a time. */
export function* layFilm(
  brush: OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D,
  film: Film,
  frame: PixelFrame,
): Generator<void> {
  const { canvas } = brush;
  const left = Math.max(0, frame.left);
  const width = Math.min(canvas.width, frame.left + frame.width) - left;
  const bottom = Math.min(canvas.height, frame.top + frame.height);
  if (width <= 0) return;
  const [red, green, blue] = seenValues(film) as [Uint8Array, Uint8Array, Uint8Array];
  const rows = Math.max(1, Math.floor(STRIP / width));
  for (let top = Math.max(0, frame.top); top < bottom; top += rows) {
    const pixels = brush.getImageData(left, top, width, Math.min(rows, bottom - top));
    const { data } = pixels;
    for (let at = 0; at < data.length; at += 4) {
      data[at] = red[data[at]!]!;
      data[at + 1] = green[data[at + 1]!]!;
      data[at + 2] = blue[data[at + 2]!]!;
    }
    brush.putImageData(pixels, left, top);
    yield;
  }
}
