import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { distance } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import { rectangle } from '#paper/drawing/path.ts';
import { writeSvg, writeSvgForPixels } from '#paper/svg/write.ts';
import { describeWith } from '../../support/outside.ts';
import { edging } from '../../support/patterns/index.ts';
import { blobs } from '../support/blobs.ts';
import { typeface } from '../support/fonts.ts';
import { holesOf, paper, print, stated } from '../support/print.ts';
import { inFolder, type Seen } from '../support/raster.ts';

const square: InkMark = {
  kind: 'fill',
  role: 'guide',
  path: rectangle({ left: 50, top: 100, right: 150, bottom: 200 }),
  colour: '#000000',
};
const svg = writeSvg({ paper: paper('A4'), title: 'A <square> & "more"', marks: [square] }, typeface);

/** A page of 254 dots an inch has ten pixels a mm. */
const DPI = 254;

async function greyOf(png: Uint8Array): Promise<Seen> {
  const { data, info } = await sharp(png)
    .flatten({ background: '#ffffff' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return {
    picture: { width: info.width, height: info.height, grey: new Uint8Array(data) },
    mm: { x: 0.1, y: 0.1 },
  };
}

const byResvg = (text: string): Uint8Array => new Resvg(text, { dpi: DPI }).render().asPng();

const whole = { left: 0, top: 0, right: 210, bottom: 297 };

function expectSquare(seen: Seen): void {
  expect([seen.picture.width, seen.picture.height]).toEqual([2100, 2970]);
  const found = blobs(seen, whole);
  expect(found).toHaveLength(1);
  expect(found[0]!.width).toBeCloseTo(100, 6);
  expect(found[0]!.height).toBeCloseTo(100, 6);
  expect(found[0]!.centre.x).toBeCloseTo(100, 6);
  expect(found[0]!.centre.y).toBeCloseTo(150, 6);
}

describe('a square of 100 mm is 1000 pixels at 254 dpi', () => {
  test('in resvg', async () => expectSquare(await greyOf(byResvg(svg))));

  test('in sharp', async () => {
    const text = writeSvgForPixels({ paper: paper('A4'), title: 'square', marks: [square] }, typeface, DPI);
    const png = await sharp(new TextEncoder().encode(text)).png().toBuffer();
    expectSquare(await greyOf(png));
  });
});

describeWith(['rsvg-convert'], 'the same in librsvg', () => {
  test('a square of 100 mm', async () => {
    const png = inFolder((folder) => {
      const file = join(folder, 'in.svg');
      writeFileSync(file, svg);
      return execFileSync('rsvg-convert', ['-d', `${DPI}`, '-p', `${DPI}`, file], { maxBuffer: 1 << 28 });
    });
    expectSquare(await greyOf(png));
  });
});

describe('a sheet as SVG', () => {
  const [dots, guide] = print(stated(edging())).sheets;

  test('has its holes where the model has them', async () => {
    const text = writeSvg(dots!, typeface);
    const png = new Resvg(text, { dpi: 508 }).render().asPng();
    const seen = { ...(await greyOf(png)), mm: { x: 0.05, y: 0.05 } };
    const found = blobs(seen, whole);
    const index = new PointIndex(found.map(({ centre }) => centre));
    for (const hole of holesOf(dots!.marks)) {
      if (hole.kind !== 'disc') throw new Error('not a dot');
      const near = index.within(hole.at, 0.5).map((k) => distance(found[k]!.centre, hole.at));
      expect(Math.min(...near)).toBeLessThan(0.02);
    }
  });

  test('says its size in mm with one unit a mm, and needs no font', () => {
    const text = writeSvg(guide!, typeface);
    expect(text).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
    expect(text).not.toMatch(/<text|font-family|[0-9]e-/);
    expect(text).toContain('aria-label="Marking guide"');
  });

  test('escapes what a name may hold', () => {
    expect(svg).toContain('<title>A &lt;square> &amp; &quot;more&quot;</title>');
  });
});

describe('a picture under the dots', () => {
  // A corner pixel black, all others white: its centre must come out where the map puts pixel (0, 0).
  const bytes = new Uint8Array(20 * 30).fill(255);
  bytes[0] = 0;
  const marks: InkMark[] = [
    {
      kind: 'image',
      role: 'picture',
      picture: { form: 'raster', width: 20, height: 30, channels: 1, bytes },
      place: { a: 2, b: 0, c: 0, d: 2, e: 41, f: 61 },
    },
  ];

  test('lies where its map says', async () => {
    const text = writeSvg({ paper: paper('A4'), title: 'picture', marks }, typeface);
    const found = blobs(await greyOf(byResvg(text)), whole);
    const dark = found.sort((one, other) => other.area - one.area)[0]!;
    expect(dark.centre.x).toBeCloseTo(41, 0);
    expect(dark.centre.y).toBeCloseTo(61, 0);
  });
});
