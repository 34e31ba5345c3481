import sharp from 'sharp';
import { expect, test } from 'vitest';
import type { Picture } from '#paper/drawing/mark.ts';
import { writePdf } from '#paper/pdf/write.ts';
import { describeWith } from '../../support/outside.ts';
import { blobs } from '../support/blobs.ts';
import { typeface } from '../support/fonts.ts';
import { paper } from '../support/print.ts';
import { rasterise } from '../support/raster.ts';

const WIDTH = 80;
const HEIGHT = 120;
/** Eight pixels square, its centre at (15.5, 27.5). */
const spot = { left: 12, top: 24, size: 8 };

const grey = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, k) => {
  const [column, row] = [k % WIDTH, Math.floor(k / WIDTH)];
  const isIn = (at: number, from: number): boolean => at >= from && at < from + spot.size;
  return isIn(column, spot.left) && isIn(row, spot.top) ? 0 : 255;
});
const raw = { raw: { width: WIDTH, height: HEIGHT, channels: 1 as const } };
const jpeg = new Uint8Array(await sharp(grey, raw).jpeg({ quality: 100 }).toBuffer());
const pictures: Readonly<Record<string, Picture>> = {
  raster: { form: 'raster', width: WIDTH, height: HEIGHT, channels: 1, bytes: grey },
  jpeg: { form: 'jpeg', width: WIDTH, height: HEIGHT, channels: 3, bytes: jpeg },
};
// sharp writes grey JPEG as one channel.
const shown: Readonly<Record<string, Picture>> = {
  ...pictures,
  jpeg: {
    ...(pictures.jpeg as Extract<Picture, { form: 'jpeg' }>),
    channels: (await sharp(jpeg).metadata()).channels as 1 | 3,
  },
};

describeWith(['pdftotext', 'mutool'], 'the picture of the paper in a PDF', () => {
  test.each(Object.keys(shown))('%s: lies where its map says, slanted as it says', async (form) => {
    const place = { a: 1.2, b: 0.1, c: -0.1, d: 1.2, e: 40, f: 50 };
    const marks = [{ kind: 'image', role: 'picture', picture: shown[form]!, place } as const];
    const pdf = await writePdf([{ paper: paper('A4'), marks }], { typeface, meta: { title: 'picture' } });
    const [column, row] = [spot.left + (spot.size - 1) / 2, spot.top + (spot.size - 1) / 2];
    for (const program of ['poppler', 'mupdf'] as const) {
      const seen = await rasterise(program, pdf, 1, 254, paper('A4'));
      const found = blobs(seen, { left: 0, top: 0, right: 210, bottom: 297 });
      const { centre } = found.sort((one, other) => other.area - one.area)[0]!;
      expect(Math.abs(centre.x - (1.2 * column - 0.1 * row + 40))).toBeLessThan(0.1);
      expect(Math.abs(centre.y - (0.1 * column + 1.2 * row + 50))).toBeLessThan(0.1);
    }
  });
});
