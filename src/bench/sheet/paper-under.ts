import type { PaperPicture } from '#pattern/pattern.ts';

/** Longest side of the picture as the screen needs it; a larger one would only make every frame slower. */
const MOST_SIDE = 4096;

/** The paper's picture, ready to be drawn under the pins. */
export class PaperUnder {
  readonly #picture: ImageBitmap;
  readonly #paper: PaperPicture;

  constructor(picture: ImageBitmap, paper: PaperPicture) {
    this.#picture = picture;
    this.#paper = paper;
  }

  /** Decodes a picture file. Rejects where the browser cannot read it. */
  static async open(file: Blob, paper: PaperPicture, mostSide?: number): Promise<PaperUnder> {
    return new PaperUnder(await decodePaper(file, paper, mostSide), paper);
  }

  /** Draws it with a brush whose unit is the pattern's. The brush's map is left changed. */
  draw(brush: OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D): void {
    // Put away meanwhile: another is on its way.
    if (this.#picture.width === 0) return;
    const { toPattern, width, height } = this.#paper;
    brush.transform(toPattern.a, toPattern.b, toPattern.c, toPattern.d, toPattern.e, toPattern.f);
    brush.imageSmoothingEnabled = true;
    brush.imageSmoothingQuality = 'medium';
    // Pixel centres are whole, so that the picture's edge lies half a pixel further out.
    brush.drawImage(this.#picture, -0.5, -0.5, width, height);
  }

  close(): void {
    this.#picture.close();
  }
}

/** A picture file of that size, decoded beside the page and no larger than it is shown. */
export function decodePaper(
  file: Blob,
  { width, height }: Pick<PaperPicture, 'width' | 'height'>,
  mostSide = MOST_SIDE,
): Promise<ImageBitmap> {
  const share = Math.min(1, mostSide / Math.max(width, height));
  if (share === 1) return createImageBitmap(file);
  return createImageBitmap(file, {
    resizeWidth: Math.max(1, Math.round(width * share)),
    resizeHeight: Math.max(1, Math.round(height * share)),
  });
}
