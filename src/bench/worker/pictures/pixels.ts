import type { PixelPicture } from '#base/picture/warp.ts';
import { done, type Result } from '#base/result.ts';
import type { PictureTrouble } from '#jobs/picture/picture.ts';
import { decode } from './decode.ts';
import { UprightPicture } from './upright.ts';

/** The pixels of a picture that a pattern keeps: upright already, in grey or in red, green and blue. */
export async function readPixels(bytes: Uint8Array): Promise<Result<PixelPicture, PictureTrouble>> {
  const decoded = await decode(bytes);
  if (!decoded.ok) return decoded;
  const channels = decoded.value.headers.grey ? 1 : 3;
  const picture = new UprightPicture(decoded.value.bitmap, 1);
  const { width, height } = picture;
  const pixels = new Uint8Array(width * height * channels);
  let to = 0;
  for (const { rgba } of picture.strips()) {
    for (let from = 0; from < rgba.length; from += 4) {
      for (let channel = 0; channel < channels; channel++) pixels[to++] = rgba[from + channel]!;
    }
  }
  picture.close();
  return done({ width, height, channels, bytes: pixels });
}
