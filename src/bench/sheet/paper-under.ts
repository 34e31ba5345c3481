import type { PaperPicture } from '#pattern/pattern.ts';
import { decodePaper } from './decode-paper.ts';

/** Longest side of the picture as the screen needs it; a larger one would only take room. */
export const MOST_SIDE = 4096;

/** How a picture lies on the sheet. */
export type PictureLies = Pick<PaperPicture, 'width' | 'height' | 'toPattern'>;

/** The paper's picture, ready to be drawn under the pins. */
export class PaperUnder {
  /** The largest first, each half as large as the one before. */
  readonly #levels: readonly ImageBitmap[];
  readonly #paper: PictureLies;

  constructor(levels: readonly ImageBitmap[], paper: PictureLies) {
    this.#levels = levels;
    this.#paper = paper;
  }

  /** Decodes a picture file. Rejects where the browser cannot read it. */
  static async open(file: Blob, paper: PaperPicture, mostSide = MOST_SIDE): Promise<PaperUnder> {
    const { width, height } = paper;
    return new PaperUnder(await decodePaper({ file, width, height, mostSide }), paper);
  }

  /** Draws it with a brush whose unit is the pattern's. The brush's map is left changed. */
  draw(brush: OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D): void {
    const { toPattern, width, height } = this.#paper;
    brush.transform(toPattern.a, toPattern.b, toPattern.c, toPattern.d, toPattern.e, toPattern.f);
    const { a, b } = brush.getTransform();
    const shown = width * Math.hypot(a, b);
    // The smallest that has a dot for every pixel: shrinking a larger one at every repaint is slow.
    const level = this.#levels.findLast((one) => one.width >= shown) ?? this.#levels[0];
    // Put away meanwhile: another is on its way.
    if (!level || level.width === 0) return;
    brush.imageSmoothingEnabled = true;
    brush.imageSmoothingQuality = 'low';
    // Pixel centres are whole, so that the picture's edge lies half a pixel further out.
    brush.drawImage(level, -0.5, -0.5, width, height);
  }

  close(): void {
    for (const level of this.#levels) level.close();
  }
}
