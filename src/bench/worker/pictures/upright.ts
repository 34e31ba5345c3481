import type { Orientation } from './headers/headers.ts';

/** Pixels of one strip: as many as are held at once beside the decoded picture. */
const STRIP = 4_000_000;

/** Some rows of a picture, from `top` on: red, green, blue and an alpha of 255, on white. */
export interface Strip {
  readonly top: number;
  readonly rows: number;
  readonly rgba: Uint8ClampedArray;
}

/** A decoded picture as a person sees it: upright, on white paper. */
export class UprightPicture {
  readonly width: number;
  readonly height: number;
  readonly #bitmap: ImageBitmap;
  readonly #turn: Turn;

  constructor(bitmap: ImageBitmap, orientation: Orientation) {
    this.#bitmap = bitmap;
    this.#turn = TURNS[orientation](bitmap.width, bitmap.height);
    const onItsSide = orientation >= 5;
    this.width = onItsSide ? bitmap.height : bitmap.width;
    this.height = onItsSide ? bitmap.width : bitmap.height;
  }

  /** Its pixels, a strip at a time: no canvas is larger than browsers allow, and few pixels are held twice. */
  *strips(): Generator<Strip> {
    const most = Math.max(1, Math.min(this.height, Math.floor(STRIP / this.width)));
    const context = contextOf(this.width, most, true);
    for (let top = 0; top < this.height; top += most) {
      const rows = Math.min(most, this.height - top);
      this.#draw(context, top);
      yield { top, rows, rgba: context.getImageData(0, 0, this.width, rows).data };
    }
  }

  /** The whole of it as a JPEG file. */
  async toJpeg(): Promise<Uint8Array> {
    const context = contextOf(this.width, this.height, false);
    this.#draw(context, 0);
    const blob = await context.canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 });
    return new Uint8Array(await blob.arrayBuffer());
  }

  close(): void {
    this.#bitmap.close();
  }

  #draw(context: OffscreenCanvasRenderingContext2D, top: number): void {
    const [a, b, c, d, e, f] = this.#turn;
    context.resetTransform();
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, context.canvas.width, context.canvas.height);
    context.setTransform(a, b, c, d, e, f - top);
    context.drawImage(this.#bitmap, 0, 0);
  }
}

function contextOf(width: number, height: number, willReadFrequently: boolean) {
  const context = new OffscreenCanvas(width, height).getContext('2d', { alpha: false, willReadFrequently });
  if (!context) throw new RangeError(`UprightPicture: no canvas of ${width} by ${height}`);
  context.imageSmoothingEnabled = false;
  return context;
}

/** Where a stored pixel stands upright, as a canvas takes it: (a x + c y + e, b x + d y + f). */
type Turn = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** EXIF 2.3, tag 274, for a stored picture of `w` by `h`. */
const TURNS: Readonly<Record<Orientation, (w: number, h: number) => Turn>> = {
  1: () => [1, 0, 0, 1, 0, 0],
  2: (w) => [-1, 0, 0, 1, w, 0],
  3: (w, h) => [-1, 0, 0, -1, w, h],
  4: (_, h) => [1, 0, 0, -1, 0, h],
  5: () => [0, 1, 1, 0, 0, 0],
  6: (_, h) => [0, 1, -1, 0, h, 0],
  7: (w, h) => [0, -1, -1, 0, h, w],
  8: (w) => [0, -1, 1, 0, 0, w],
};
