import { done, failed, type Result } from '#base/result.ts';
import { kindOf, type PictureFormat } from '#jobs/picture/kind.ts';
import { MOST_PIXELS } from '#jobs/picture/limits.ts';
import { FORMAT_NAMES } from '#jobs/picture/notes.ts';
import type { PictureTrouble } from '#jobs/picture/picture.ts';
import type { PictureHeaders } from './headers/headers.ts';
import { headersIn } from './headers/index.ts';
import type { TiffHeaders } from './headers/tiff.ts';

/** A picture as it is stored, with what its file says of it. */
export interface Decoded {
  readonly format: PictureFormat;
  readonly headers: PictureHeaders;
  readonly bitmap: ImageBitmap;
}

/**
 * Decodes a JPEG, PNG, TIFF or WebP file. The browser is never left to turn it by its EXIF orientation, since browsers
 * differ in what they turn. Nothing is unpacked whose headers claim too many pixels.
 */
export async function decode(bytes: Uint8Array): Promise<Result<Decoded, PictureTrouble>> {
  if (bytes.length === 0) return failed({ kind: 'empty-file' });
  const kind = kindOf(bytes);
  if (!('format' in kind)) return failed({ kind: 'not-a-picture', is: kind.other });
  const { format } = kind;
  const damaged = failed({ kind: 'damaged-picture', format: FORMAT_NAMES[format] } as const);
  const headers = headersIn(bytes, format);
  if (!headers) return damaged;
  const { width, height } = headers;
  if (width * height > MOST_PIXELS) {
    const upright = headers.orientation >= 5 ? { width: height, height: width } : { width, height };
    return failed({ kind: 'picture-too-large', ...upright, limit: MOST_PIXELS });
  }
  if (!headers.whole) return damaged;
  try {
    const bitmap =
      format === 'tiff'
        ? await (await import('./tiff.ts')).tiffBitmap(bytes, headers as TiffHeaders)
        : await createImageBitmap(new Blob([headers.unturned() as BlobPart], { type: `image/${format}` }));
    if (bitmap.width === width && bitmap.height === height) return done({ format, headers, bitmap });
    bitmap.close();
    return damaged;
  } catch {
    // Whatever a decoder says about damage is in a programmer's words and speaks of its own insides.
    return damaged;
  }
}
