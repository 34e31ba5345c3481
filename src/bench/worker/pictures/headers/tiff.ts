import { orientationOf, type PictureHeaders } from './headers.ts';
import { type Tags, tagsIn } from './tags.ts';

/** A TIFF file's headers, with all numbers of its first page. */
export interface TiffHeaders extends PictureHeaders {
  readonly tags: Tags;
}

/** The tags of TIFF 6.0 that say where and how the pixels lie. */
export const TIFF = {
  width: 256,
  height: 257,
  depth: 258,
  compression: 259,
  meaning: 262,
  orientation: 274,
  stripAt: 273,
  samples: 277,
  stripRows: 278,
  stripLength: 279,
  planes: 284,
  colours: 320,
  tileAt: 324,
  tileLength: 325,
  extra: 338,
  format: 339,
} as const;

/** Reads the first directory of a TIFF file (6.0); null where there is none, or it gives no size. */
export function tiffHeaders(bytes: Uint8Array): TiffHeaders | null {
  const found = tagsIn(bytes);
  const width = found?.first.get(TIFF.width)?.[0];
  const height = found?.first.get(TIFF.height)?.[0];
  if (!found || !width || !height) return null;
  const { first, count } = found;
  const starts = first.get(TIFF.tileAt) ?? first.get(TIFF.stripAt) ?? [];
  const lengths = first.get(TIFF.tileLength) ?? first.get(TIFF.stripLength) ?? [];
  return {
    ...{ width, height, pages: count, tags: first },
    orientation: orientationOf(first.get(TIFF.orientation)?.[0]),
    grey: (first.get(TIFF.meaning)?.[0] ?? 1) <= 1,
    plain: false,
    whole: starts.length > 0 && starts.every((start, index) => start + (lengths[index] ?? 0) <= bytes.length),
    unturned: () => bytes,
  };
}
