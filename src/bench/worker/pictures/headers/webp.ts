import { joined, type PictureHeaders, textAt } from './headers.ts';
import { exifOrientation } from './tags.ts';

/** Reads the chunks of a WebP file (RFC 9649); null where none of them gives a size. */
export function webpHeaders(bytes: Uint8Array): PictureHeaders | null {
  if (bytes.length < 20) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = view.getUint32(4, true) + 8;
  let size: readonly [number, number] | null = null;
  let exif: readonly [number, number] | null = null;
  let frames = 0;
  for (let at = 12; at + 8 <= Math.min(end, bytes.length); ) {
    const name = textAt(bytes, at, 4);
    const length = view.getUint32(at + 4, true);
    size ??= SIZES[name]?.(bytes.subarray(at + 8, at + 18)) ?? null;
    if (name === 'ANMF') frames++;
    if (name === 'EXIF') exif ??= [at, at + 8 + length];
    at += 8 + length + (length % 2);
  }
  if (!size || !(size[0] > 0) || !(size[1] > 0)) return null;
  return {
    ...{ width: size[0], height: size[1], pages: Math.max(1, frames) },
    whole: end <= bytes.length,
    orientation: exifOrientation(exif ? bytes.subarray(exif[0] + 8, exif[1]) : undefined),
    grey: false,
    plain: false,
    // Chunks of unknown names are passed over, and nothing else in the file has to change for it.
    unturned: () =>
      exif ? joined([bytes.subarray(0, exif[0]), UNKNOWN, bytes.subarray(exif[0] + 4)]) : bytes,
  };
}

const UNKNOWN = new TextEncoder().encode('none');

/** Where each kind of first chunk has the size. */
const SIZES: Readonly<Record<string, (chunk: Uint8Array) => readonly [number, number]>> = {
  VP8X: (chunk) => [1 + littleEndian(chunk, 4, 3), 1 + littleEndian(chunk, 7, 3)],
  'VP8 ': (chunk) => [littleEndian(chunk, 6, 2) & 0x3fff, littleEndian(chunk, 8, 2) & 0x3fff],
  VP8L: (chunk) => {
    const packed = littleEndian(chunk, 1, 4);
    return [1 + (packed % 0x4000), 1 + (Math.floor(packed / 0x4000) % 0x4000)];
  },
};

function littleEndian(bytes: Uint8Array, at: number, length: number): number {
  let value = 0;
  for (let index = length - 1; index >= 0; index--) value = value * 256 + (bytes[at + index] ?? Number.NaN);
  return value;
}
