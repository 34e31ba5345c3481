import { type Orientation, orientationOf } from './headers.ts';

/** The numbers of one directory of a TIFF file or EXIF block, by their tags. */
export type Tags = ReadonlyMap<number, readonly number[]>;

const ORIENTATION = 274;

/** Bytes of one value, by the field types of TIFF 6.0 that hold whole numbers; 7 is any byte. */
const SIZES: Readonly<Record<number, 1 | 2 | 4>> = { 1: 1, 3: 2, 4: 4, 7: 1 };

/**
 * The directories of a TIFF file, the first of them read: null where there is none that can be read. A chain that runs
 * in a circle, or out of the file, counts as ended.
 */
export function tagsIn(bytes: Uint8Array): { readonly first: Tags; readonly count: number } | null {
  if (bytes.length < 8) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const little = view.getUint16(0) === 0x4949;
  if (view.getUint16(2, little) !== 42) return null;
  const seen = new Set<number>();
  let at = view.getUint32(4, little);
  const start = at;
  while (at !== 0 && at + 2 <= bytes.length && !seen.has(at)) {
    const end = at + 2 + 12 * view.getUint16(at, little);
    if (end > bytes.length) break;
    seen.add(at);
    at = end + 4 <= bytes.length ? view.getUint32(end, little) : 0;
  }
  return seen.size === 0 ? null : { first: directoryAt(view, start, little), count: seen.size };
}

function directoryAt(view: DataView, start: number, little: boolean): Tags {
  const tags = new Map<number, number[]>();
  const count = view.getUint16(start, little);
  for (let index = 0; index < count; index++) {
    const at = start + 2 + 12 * index;
    const size = SIZES[view.getUint16(at + 2, little)];
    const many = view.getUint32(at + 4, little);
    if (!size) continue;
    const from = size * many <= 4 ? at + 8 : view.getUint32(at + 8, little);
    if (from + size * many > view.byteLength) continue;
    const values = Array.from({ length: many }, (_, n) => {
      const place = from + n * size;
      return size === 1
        ? view.getUint8(place)
        : size === 2
          ? view.getUint16(place, little)
          : view.getUint32(place, little);
    });
    tags.set(view.getUint16(at, little), values);
  }
  return tags;
}

/** The orientation that an EXIF block states, with or without the letters 'Exif' before it. */
export function exifOrientation(block: Uint8Array | undefined): Orientation {
  if (!block) return 1;
  const hasLetters = block[0] === 0x45 && block[1] === 0x78;
  return orientationOf(tagsIn(hasLetters ? block.subarray(6) : block)?.first.get(ORIENTATION)?.[0]);
}
