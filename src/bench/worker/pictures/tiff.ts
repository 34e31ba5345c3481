import { decodeImage, type IFD } from 'utif2';
import type { Tags } from './headers/tags.ts';
import { TIFF, type TiffHeaders } from './headers/tiff.ts';
import { type Samples, writeColours } from './tiff-colours.ts';

/** The first page of a TIFF file, as it is stored. Throws where it is damaged or of a kind that nothing here reads. */
export async function tiffBitmap(bytes: Uint8Array, headers: TiffHeaders): Promise<ImageBitmap> {
  const { width, height, tags } = headers;
  const one = (tag: number, usual: number) => tags.get(tag)?.[0] ?? usual;
  if (one(TIFF.format, 1) !== 1) throw new RangeError('tiffBitmap: its samples are no whole numbers');
  const isJpeg = one(TIFF.compression, 1) === JPEG;
  // JPEG data come out as red, green and blue, whatever they were.
  const parts = isJpeg ? 3 : one(TIFF.samples, 1);
  const apart = one(TIFF.planes, 1) === 2 && parts > 1;
  if (apart && isJpeg) throw new RangeError('tiffBitmap: JPEG in planes');
  const file = bytes.byteLength === bytes.buffer.byteLength ? bytes.buffer : bytes.slice().buffer;
  const pages = apart
    ? Array.from({ length: parts }, (_, plane) => planeOf(tags, plane, parts))
    : [new Map([...tags, ...(isJpeg ? AS_COLOURS : [])])];
  const planes = pages.map((page) => unpack(file as ArrayBuffer, page));
  const samples: Samples = {
    ...{ width, height, parts, planes },
    depth: isJpeg ? 8 : one(TIFF.depth, 1),
    meaning: isJpeg ? RGB : one(TIFF.meaning, parts >= 3 ? RGB : BLACK_IS_NOUGHT),
    colours: tags.get(TIFF.colours) ?? [],
    clear: one(TIFF.extra, 0),
  };
  const rgba = new Uint8ClampedArray(width * height * 4);
  writeColours(samples, rgba);
  return createImageBitmap(new ImageData(rgba, width, height));
}

const JPEG = 7;
const RGB = 2;
const BLACK_IS_NOUGHT = 1;

const AS_COLOURS: readonly (readonly [number, readonly number[]])[] = [
  [TIFF.samples, [3]],
  [TIFF.depth, [8, 8, 8]],
  [TIFF.meaning, [RGB]],
];

/** The tags of one colour of a page whose colours are stored apart. */
function planeOf(tags: Tags, plane: number, parts: number): Tags {
  const own = new Map(tags);
  for (const tag of [TIFF.stripAt, TIFF.stripLength, TIFF.tileAt, TIFF.tileLength]) {
    const values = tags.get(tag);
    const many = (values?.length ?? 0) / parts;
    if (values) own.set(tag, values.slice(plane * many, (plane + 1) * many));
  }
  const depth = tags.get(TIFF.depth)?.[0] ?? 1;
  return own.set(TIFF.samples, [1]).set(TIFF.planes, [1]).set(TIFF.depth, [depth]);
}

/** The samples of a page, row after row. */
function unpack(file: ArrayBuffer, tags: Tags): Uint8Array {
  const page: Record<string, number[]> = { [`t${TIFF.meaning}`]: [BLACK_IS_NOUGHT] };
  for (const [tag, values] of tags) page[`t${tag}`] = [...values];
  // The unpacker tells the console what it does, which is of no use to anybody here.
  const { log } = console;
  let unknown = false;
  console.log = (...words: unknown[]) => {
    unknown ||= String(words[0]).startsWith('Unknown');
  };
  try {
    decodeImage(file, page as unknown as IFD);
  } finally {
    console.log = log;
  }
  if (unknown) throw new RangeError('tiffBitmap: nothing here unpacks it');
  return (page as unknown as IFD).data;
}
