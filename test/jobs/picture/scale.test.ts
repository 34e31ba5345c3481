import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { densitiesIn } from '#jobs/picture/density.ts';
import type { FileScale } from '#jobs/picture/picture.ts';
import { scaleFrom } from '#jobs/picture/scale.ts';
import { describeWith, outsideFile, outsidePath } from '../../support/outside.ts';

const require = createRequire(import.meta.url);
const scaleOf = (bytes: Uint8Array): FileScale => scaleFrom(densitiesIn(bytes));
const blank = sharp({ create: { width: 64, height: 48, channels: 3, background: '#ffffff' } });

/** A JPEG whose JFIF header states the given density (ITU-T T.871: unit, then two 16 bit numbers). */
async function jfif(unit: number, across: number, down = across): Promise<Uint8Array> {
  const bytes = new Uint8Array(await blank.clone().jpeg().toBuffer());
  const header = [0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46, 0, 1, 1, unit];
  const density = [across >> 8, across & 255, down >> 8, down & 255, 0, 0];
  const rest = bytes[3] === 0xe0 ? bytes.subarray(4 + bytes[4]! * 256 + bytes[5]!) : bytes.subarray(2);
  return Uint8Array.from([...header, ...density, ...rest]);
}

describe('scale stated in the file', () => {
  test('JFIF unit 1 is dots an inch: 01 012c 012c is 300 (ITU-T T.871)', async () => {
    expect(scaleOf(await jfif(1, 300))).toEqual({ kind: 'stated', dpi: 300 });
  });

  test('JFIF unit 2 is dots a centimetre: 02 0076 0076 is 300 within its rounding (ITU-T T.871)', async () => {
    expect(scaleOf(await jfif(2, 118))).toEqual({ kind: 'stated', dpi: 300 });
  });

  test('JFIF unit 0 states a ratio, no scale', async () => {
    expect(scaleOf(await jfif(0, 300))).toEqual({ kind: 'none' });
  });

  test.each(['jpeg', 'png', 'tiff', 'webp'] as const)('%s written at 600 dpi', async (format) => {
    const bytes = await blank.clone().withMetadata({ density: 600 }).toFormat(format).toBuffer();
    expect(scaleOf(bytes)).toEqual({ kind: 'stated', dpi: 600 });
  });

  test('a PNG that was told no scale', async () => {
    // The writer states 1 dot a millimetre where it is told nothing.
    expect(scaleOf(await blank.clone().png().toBuffer())).toMatchObject({ kind: 'doubtful', why: 'absurd' });
  });

  // Debian opencv-doc: acircles_pattern.png states 5906 dots a metre, 150 an inch.
  describeWith(['dot-sheets'], 'a PNG of known size', () => {
    test('150 dpi', () => {
      expect(scaleOf(outsideFile('dot-sheets', 'acircles_pattern.png'))).toEqual({
        kind: 'stated',
        dpi: 150,
      });
    });
    test('a photograph without it', () => {
      expect(scaleOf(outsideFile('dot-sheets', 'dualCircles.jpg')).kind).not.toBe('stated');
    });
  });
});

describe('scale that nobody measured', () => {
  test.each([
    [1, 72, 'default'],
    [1, 96, 'default'],
    [2, 28, 'default'],
    [1, 1, 'absurd'],
    [1, 20_000, 'absurd'],
  ])('JFIF unit %i, %i', async (unit, value, why) => {
    expect(scaleOf(await jfif(unit, value))).toMatchObject({ kind: 'doubtful', why });
  });

  test('a camera has no scale, whatever it writes (npm exif 0.6.0)', () => {
    const folder = join(dirname(require.resolve('exif/package.json')), 'test');
    for (const name of ['sony-alpha-6000.jpg', 'evil1.jpg']) {
      expect(scaleOf(readFileSync(join(folder, name)))).toMatchObject({ kind: 'doubtful', why: 'camera' });
    }
  });

  // Debian golang-github-rwcarlsen-goexif-dev: the headers of some fifty cameras and of one flatbed scanner.
  describeWith(['camera-files'], 'the headers of real cameras and a scanner', () => {
    test('only the scanner is taken at its word', () => {
      const names = readdirSync(outsidePath('camera-files', ''));
      expect(names.length).toBeGreaterThan(50);
      const believed = names.filter((name) => scaleOf(outsideFile('camera-files', name)).kind === 'stated');
      expect(believed).toEqual(['FailedHash-NoDate-sep-remembory.jpg']);
    });
  });
});

describe('several statements', () => {
  const density = (across: number, down = across, rounding = 0) => ({ across, down, rounding });
  const weigh = (...found: ReturnType<typeof density>[]) => scaleFrom({ found, byCamera: false });

  test('a measured one counts against a default one', () => {
    expect(weigh(density(72), density(300))).toEqual({ kind: 'stated', dpi: 300 });
    expect(weigh(density(1), density(600))).toEqual({ kind: 'stated', dpi: 600 });
  });

  test('two measured ones that differ prove nothing', () => {
    expect(weigh(density(300), density(600))).toMatchObject({ kind: 'doubtful', why: 'disagreeing' });
  });

  test('two that differ only by the rounding of their units agree', () => {
    expect(weigh(density(299.72, 299.72, 1.27), density(300, 300, 0.5))).toEqual({
      kind: 'stated',
      dpi: 300,
    });
  });

  test('dots that are not square are reported, as those of a fax are', () => {
    expect(weigh(density(204, 98))).toEqual({ kind: 'unequal', across: 204, down: 98 });
  });
});
