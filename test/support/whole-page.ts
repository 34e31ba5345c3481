import type { GreyPicture } from '#base/picture/grey.ts';
import { drawScan } from './trace-scans.ts';

/** A drawn picture of a whole sheet, and where its holes are. */
export interface WholePage {
  readonly picture: GreyPicture;
  readonly truth: readonly { readonly column: number; readonly row: number; readonly hidden: boolean }[];
}

/** An A4 sheet full of generated pages laid side by side. */
export async function drawWholePage(dpi: number): Promise<WholePage> {
  const width = Math.round((210 / 25.4) * dpi);
  const height = Math.round((297 / 25.4) * dpi);
  const grey = new Uint8Array(width * height).fill(240);
  const truth: WholePage['truth'][number][] = [];
  let left = 0;
  let top = 0;
  let below = 0;
  for (let seed = 401; top < height; seed++) {
    const { picture, truth: part } = await drawScan(seed, dpi);
    if (left + picture.width > width) {
      left = 0;
      top = below;
    }
    if (top + picture.height > height) break;
    for (let row = 0; row < picture.height; row++) {
      const from = row * picture.width;
      grey.set(picture.grey.subarray(from, from + picture.width), (top + row) * width + left);
    }
    for (const { column, row, hidden } of part.holes) {
      truth.push({ column: column + left, row: row + top, hidden });
    }
    left += picture.width;
    below = Math.max(below, top + picture.height);
  }
  return { picture: { width, height, grey }, truth };
}
