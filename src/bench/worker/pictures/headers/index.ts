import type { PictureFormat } from '#jobs/picture/kind.ts';
import type { PictureHeaders } from './headers.ts';
import { jpegHeaders } from './jpeg.ts';
import { pngHeaders } from './png.ts';
import { tiffHeaders } from './tiff.ts';
import { webpHeaders } from './webp.ts';

/** Reads the headers of a file of that format; null where they are damaged. */
export const headersIn = (bytes: Uint8Array, format: PictureFormat): PictureHeaders | null =>
  READERS[format](bytes);

const READERS: Readonly<Record<PictureFormat, (bytes: Uint8Array) => PictureHeaders | null>> = {
  jpeg: jpegHeaders,
  png: pngHeaders,
  tiff: tiffHeaders,
  webp: webpHeaders,
};
