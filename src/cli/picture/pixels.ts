import sharp from 'sharp';
import type { PixelPicture } from '#base/picture/warp.ts';
import { done, failed, type Result } from '#base/result.ts';
import { kindOf } from '#jobs/picture/kind.ts';
import { MOST_PIXELS } from '#jobs/picture/limits.ts';
import type { PictureTrouble } from '#jobs/picture/picture.ts';

/** The pixels of a picture that a pattern keeps: upright already, in grey or in red, green and blue. */
export async function readPixels(bytes: Uint8Array): Promise<Result<PixelPicture, PictureTrouble>> {
  const kind = kindOf(bytes);
  if (!('format' in kind)) return failed({ kind: 'not-a-picture', is: kind.other });
  try {
    const picture = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' });
    const isGrey = (await picture.metadata()).space === 'b-w';
    const { data, info } = await picture
      .flatten({ background: '#ffffff' })
      .toColourspace(isGrey ? 'b-w' : 'srgb')
      .raw({ depth: 'uchar' })
      .toBuffer({ resolveWithObject: true });
    const { width, height, channels } = info;
    const pixels = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
    return done({ width, height, channels: channels === 1 ? 1 : 3, bytes: pixels });
  } catch {
    return failed({ kind: 'damaged-picture', format: kind.format.toUpperCase() });
  }
}
