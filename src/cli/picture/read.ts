import sharp, { type Metadata } from 'sharp';
import { done, failed, type Result } from '#base/result.ts';
import { densitiesIn } from '#jobs/picture/density.ts';
import { kindOf, type PictureFormat } from '#jobs/picture/kind.ts';
import { MOST_PIXELS } from '#jobs/picture/limits.ts';
import { FORMAT_NAMES, notesOn, turned } from '#jobs/picture/notes.ts';
import type { PictureFile, PictureIn, PictureTrouble } from '#jobs/picture/picture.ts';
import { scaleFrom } from '#jobs/picture/scale.ts';

/** Seconds after which a decoder that does not come to an end is stopped. */
const PATIENCE = 120;

// The program reads each picture once; a cache would only hold on to memory.
sharp.cache(false);

/**
 * Decodes a JPEG, PNG, TIFF or WebP file to grey pixels, upright by its EXIF orientation, 8 bits deep, with
 * transparent parts on white paper. Of several pages or frames the first is read, and a note says so.
 */
export async function readPicture(
  bytes: Uint8Array,
  name: string | null = null,
): Promise<Result<PictureIn, PictureTrouble>> {
  if (bytes.length === 0) return failed({ kind: 'empty-file' });
  const kind = kindOf(bytes);
  if (!('format' in kind)) return failed({ kind: 'not-a-picture', is: kind.other });
  const { format } = kind;
  try {
    const about = await sharp(bytes, { limitInputPixels: false }).metadata();
    const size = { width: about.autoOrient.width, height: about.autoOrient.height };
    if (size.width * size.height > MOST_PIXELS) {
      return failed({ kind: 'picture-too-large', ...size, limit: MOST_PIXELS });
    }
    const { data, info } = await upright(bytes)
      .flatten({ background: '#ffffff' })
      .toColourspace('b-w')
      .extractChannel(0)
      .raw({ depth: 'uchar' })
      .toBuffer({ resolveWithObject: true });
    return done({
      width: info.width,
      height: info.height,
      grey: new Uint8Array(data.buffer, data.byteOffset, data.byteLength),
      scale: turned(scaleFrom(densitiesIn(bytes)), (about.orientation ?? 1) >= 5),
      notes: notesOn(format, name, about.pages ?? 1),
      file: await fileToKeep(bytes, format, about),
    });
  } catch {
    // Whatever a decoder says about damage is in a programmer's words and speaks of its own insides.
    return failed({ kind: 'damaged-picture', format: FORMAT_NAMES[format] });
  }
}

const upright = (bytes: Uint8Array) =>
  sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' })
    .timeout({ seconds: PATIENCE })
    .autoOrient();

/**
 * The picture as it is kept with the pattern: the file itself where every viewer shows it as we read it, else a
 * JPEG of the same pixels.
 */
async function fileToKeep(bytes: Uint8Array, format: PictureFormat, about: Metadata): Promise<PictureFile> {
  const isUpright = (about.orientation ?? 1) === 1;
  const isPlain = about.depth === 'uchar' && ['srgb', 'b-w'].includes(about.space) && !about.hasAlpha;
  if (isUpright && isPlain && format === 'jpeg') return { name: 'paper.jpg', bytes };
  if (isUpright && isPlain && format === 'png') return { name: 'paper.png', bytes };
  const copy = await upright(bytes)
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .jpeg({ quality: 92, chromaSubsampling: '4:4:4' })
    .toBuffer();
  return { name: 'paper.jpg', bytes: new Uint8Array(copy) };
}
