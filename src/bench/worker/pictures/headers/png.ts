import { type PictureHeaders, textAt, without } from './headers.ts';
import { exifOrientation } from './tags.ts';

/** Reads the chunks of a PNG file (third edition); null where the first is not its header. */
export function pngHeaders(bytes: Uint8Array): PictureHeaders | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 33 || textAt(bytes, 12, 4) !== 'IHDR') return null;
  const [width, height] = [view.getUint32(16), view.getUint32(20)];
  const [depth, colour] = [bytes[24]!, bytes[25]!];
  if (width === 0 || height === 0) return null;
  const exif: [number, number][] = [];
  let isClear = colour >= 4;
  let whole = false;
  for (let at = 8; at + 12 <= bytes.length; ) {
    const length = view.getUint32(at);
    const name = textAt(bytes, at + 4, 4);
    const next = at + 12 + length;
    if (next > bytes.length) break;
    if (name === 'tRNS') isClear = true;
    if (name === 'eXIf') exif.push([at, next]);
    if (name === 'IEND') {
      whole = true;
      break;
    }
    at = next;
  }
  const [first] = exif;
  return {
    ...{ width, height, pages: 1, whole },
    orientation: exifOrientation(first && bytes.subarray(first[0] + 8, first[1] - 4)),
    grey: colour === 0 || colour === 4,
    plain: depth <= 8 && !isClear,
    unturned: () => without(bytes, exif),
  };
}
