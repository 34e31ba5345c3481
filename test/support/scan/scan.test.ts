import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { seededRandom } from '#base/random.ts';
import { edging, fine } from '../patterns/index.ts';
import { greyOf, jpegOf, renderScan, type ScanStyle, throughJpeg } from './index.ts';

describe.each<ScanStyle>(['print', 'photocopy', 'card'])('a generated scan as %s', (style) => {
  const known = edging({ repeats: 1 });
  const scan = renderScan(known, { style, skew: 1.5, numbers: 2 }, seededRandom(21));

  it('is dark at the middle of every hole and light where nothing is', () => {
    const picture = greyOf(scan);
    const paper = greyAt(picture, { column: 8, row: 8 });
    for (const hole of scan.truth.holes) expect(greyAt(picture, hole)).toBeLessThan(0.6 * paper);
  });

  it('comes out the same every time from the same seed, and otherwise from another', () => {
    const options = { style, skew: 1.5, numbers: 2 };
    expect(Buffer.from(renderScan(known, options, seededRandom(21)).rgb).equals(scan.rgb)).toBe(true);
    expect(Buffer.from(renderScan(known, options, seededRandom(22)).rgb).equals(scan.rgb)).toBe(false);
  });
});

describe('the truth of a generated scan', () => {
  it('gives centres that agree with the centre of darkness of lone dots', () => {
    const known = fine({ repeats: 1, groundLines: 0 });
    const scan = renderScan(
      known,
      { skew: -2, scaleX: 1.01, speckle: 0, numbers: 0, dot: 0.5 },
      seededRandom(5),
    );
    const picture = greyOf(scan);
    const offsets = scan.truth.holes.flatMap((hole, k) => {
      const alone = known.roles[k] === 'picot';
      return alone ? [distance(hole, centreOfDarkness(picture, hole, 6))] : [];
    });
    expect(offsets.length).toBeGreaterThan(5);
    expect(Math.max(...offsets)).toBeLessThan(0.35);
  });

  it('calls dots hidden where a thick line drowns them, and only there', () => {
    const drowned = renderScan(fine({ gimpOffset: 0, gimp: 1.2 }), { dot: 0.45 }, seededRandom(2));
    const plain = renderScan(fine({ gimpOffset: 1 }), { dot: 0.45, numbers: 0 }, seededRandom(2));
    expect(drowned.truth.holes.filter((hole) => hole.hidden).length).toBeGreaterThan(50);
    expect(plain.truth.holes.filter((hole) => hole.hidden).length).toBeLessThan(5);
  });

  it('survives a JPEG file, which says its resolution', async () => {
    const scan = renderScan(edging({ repeats: 1 }), { dpi: 300 }, seededRandom(1));
    const { density, width } = await sharp(await jpegOf(scan)).metadata();
    expect({ density, width }).toEqual({ density: 300, width: scan.width });
    const back = await throughJpeg(scan);
    expect(back.rgb).toHaveLength(scan.rgb.length);
    expect(back.truth).toBe(scan.truth);
  });
});

const distance = (a: PixelPoint, b: PixelPoint): number => Math.hypot(a.column - b.column, a.row - b.row);

function greyAt({ grey, width }: GreyPicture, { column, row }: PixelPoint): number {
  let sum = 0;
  for (const dy of [-1, 0, 1]) {
    for (const dx of [-1, 0, 1]) sum += grey[(Math.round(row) + dy) * width + Math.round(column) + dx]!;
  }
  return sum / 9;
}

function centreOfDarkness({ grey, width }: GreyPicture, near: PixelPoint, reach: number): PixelPoint {
  const middle = { column: Math.round(near.column), row: Math.round(near.row) };
  let [sum, column, row] = [0, 0, 0];
  for (let y = middle.row - reach; y <= middle.row + reach; y++) {
    for (let x = middle.column - reach; x <= middle.column + reach; x++) {
      const dark = Math.max(0, 170 - grey[y * width + x]!);
      sum += dark;
      column += dark * x;
      row += dark * y;
    }
  }
  return { column: column / sum, row: row / sum };
}
