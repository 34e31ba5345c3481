/** A picture file to decode, and the size of it in dots. */
export interface PaperFile {
  readonly file: Blob;
  readonly width: number;
  readonly height: number;
  /** Longest side of the largest picture wanted, dots. */
  readonly mostSide: number;
}

/** Pictures smaller than this, along the longer side, cost nothing to draw and need no smaller one. */
const LEAST_SIDE = 700;

/** The decoded picture, and smaller ones of it, each half as large as the one before. */
export async function paperLevels({ file, width, height, mostSide }: PaperFile): Promise<ImageBitmap[]> {
  const share = Math.min(1, mostSide / Math.max(width, height));
  let level = await createImageBitmap(file, share < 1 ? sized(width * share, height * share) : {});
  const levels = [level];
  while (Math.max(level.width, level.height) > LEAST_SIDE) {
    level = await createImageBitmap(level, sized(level.width / 2, level.height / 2));
    levels.push(level);
  }
  return levels;
}

const sized = (width: number, height: number): ImageBitmapOptions => ({
  resizeWidth: Math.max(1, Math.round(width)),
  resizeHeight: Math.max(1, Math.round(height)),
  resizeQuality: 'medium',
});
