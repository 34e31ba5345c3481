import type { GreyPicture } from './grey.ts';

/**
 * The picture `factor` times smaller (a whole number, 1 or more): each pixel is the mean of a square of
 * `factor` by `factor`. Columns and rows left over at the right and bottom are dropped, but never the last one.
 * Pixel (c, r) of the result has its centre at ((c + 0.5) factor - 0.5, ...) of the picture: see `grown`.
 */
export function shrink(picture: GreyPicture, factor: number): GreyPicture {
  if (!Number.isInteger(factor) || factor < 1) throw new RangeError(`shrink: factor is ${factor}`);
  if (factor === 1) return picture;
  const width = Math.max(1, Math.floor(picture.width / factor));
  const height = Math.max(1, Math.floor(picture.height / factor));
  const across = Math.min(factor, picture.width);
  const down = Math.min(factor, picture.height);
  const grey = new Uint8Array(width * height);
  const sums = new Uint32Array(width);
  const area = across * down;
  for (let row = 0; row < height; row++) {
    sums.fill(area >> 1);
    for (let inner = 0; inner < down; inner++) {
      let from = (row * factor + inner) * picture.width;
      if (across === 2) {
        for (let column = 0; column < width; column++, from += 2) {
          sums[column]! += picture.grey[from]! + picture.grey[from + 1]!;
        }
        continue;
      }
      for (let column = 0; column < width; column++) {
        let sum = 0;
        for (let step = 0; step < across; step++) sum += picture.grey[from++]!;
        sums[column]! += sum;
      }
    }
    const to = row * width;
    for (let column = 0; column < width; column++) grey[to + column] = sums[column]! / area;
  }
  return { width, height, grey };
}

/** Where a coordinate of a picture shrunk by `factor` lies in the full picture. */
export const grown = (coordinate: number, factor: number): number => (coordinate + 0.5) * factor - 0.5;

/** The other way: where a coordinate of the full picture lies in one shrunk by `factor`. */
export const shrunk = (coordinate: number, factor: number): number => (coordinate + 0.5) / factor - 0.5;
