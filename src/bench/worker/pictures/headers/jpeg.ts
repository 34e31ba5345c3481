import { type PictureHeaders, textAt, without } from './headers.ts';
import { exifOrientation } from './tags.ts';

const END = 0xd9;
const APP1 = 0xe1;

/** Reads the markers of a JPEG file (ITU-T T.81) up to its end; null where none of them gives a size. */
export function jpegHeaders(bytes: Uint8Array): PictureHeaders | null {
  let frame: { width: number; height: number; parts: number; depth: number } | null = null;
  const exif: [number, number][] = [];
  let whole = false;
  // Within the scans a 255 is followed by 0 or by a restart, so that one walk does for markers and scans alike.
  for (let at = bytes.indexOf(0xff, 2); at >= 0; at = bytes.indexOf(0xff, at)) {
    const marker = bytes[at + 1];
    if (marker === undefined) break;
    if (marker === END) {
      whole = true;
      break;
    }
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker <= 1 || (marker >= 0xd0 && marker <= 0xd8)) {
      at += 2;
      continue;
    }
    const length = number(bytes, at + 2);
    if (!(length >= 2)) break;
    if (isFrame(marker)) {
      frame = {
        depth: bytes[at + 4]!,
        height: number(bytes, at + 5),
        width: number(bytes, at + 7),
        parts: bytes[at + 9]!,
      };
    }
    if (marker === APP1 && textAt(bytes, at + 4, 6) === 'Exif\0\0') exif.push([at, at + 2 + length]);
    at += 2 + length;
  }
  if (!frame || !(frame.width > 0) || !(frame.height > 0)) return null;
  const [first] = exif;
  return {
    ...{ width: frame.width, height: frame.height, pages: 1, whole },
    orientation: exifOrientation(first && bytes.subarray(first[0] + 4, first[1])),
    grey: frame.parts === 1,
    plain: frame.depth === 8 && frame.parts !== 4,
    unturned: () => without(bytes, exif),
  };
}

/** Start of a frame of any kind; 196, 200 and 204 are other things. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

const number = (bytes: Uint8Array, at: number): number => bytes[at]! * 256 + bytes[at + 1]!;
