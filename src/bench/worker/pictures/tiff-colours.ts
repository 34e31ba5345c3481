/** Unpacked samples of a TIFF page, rows of whole bytes, high bits first, 16 bits low byte first. */
export interface Samples {
  readonly width: number;
  readonly height: number;
  /** Samples a pixel. */
  readonly parts: number;
  /** All parts of a pixel beside each other, or a plane for each. */
  readonly planes: readonly Uint8Array[];
  /** Bits a sample. */
  readonly depth: number;
  /** TIFF 6.0, PhotometricInterpretation: 0 white is nought, 1 black is nought, 2 RGB, 3 a list of colours, 5 CMYK. */
  readonly meaning: number;
  /** The list of colours: all reds, all greens, all blues, 16 bits each. */
  readonly colours: readonly number[];
  /** TIFF 6.0, ExtraSamples: 1 and 2 are a share of cover. */
  readonly clear: number;
}

const PARTS: Readonly<Record<number, number>> = { 0: 1, 1: 1, 2: 3, 3: 1, 5: 4 };

/** Writes samples as red, green, blue and alpha. Throws where they are of a kind that is not read. */
export function writeColours(samples: Samples, rgba: Uint8ClampedArray): void {
  const { width, height, parts, depth, meaning, clear } = samples;
  const needed = PARTS[meaning];
  if (!needed || parts < needed) throw new RangeError(`writeColours: meaning ${meaning}, ${parts} parts`);
  const read = rowReader(samples);
  const row = new Uint16Array(width * parts);
  const isClear = parts > needed && (clear === 1 || clear === 2);
  const most = 2 ** Math.min(depth, 8) - 1;
  const write = WRITERS[meaning]!(samples, most);
  for (let y = 0; y < height; y++) {
    read(y, row);
    for (let x = 0; x < width; x++) {
      const to = 4 * (y * width + x);
      write(row, x * parts, rgba, to);
      rgba[to + 3] = isClear ? (row[x * parts + needed]! * 255) / most : 255;
    }
  }
}

type Write = (row: Uint16Array, at: number, rgba: Uint8ClampedArray, to: number) => void;

const WRITERS: Readonly<Record<number, (samples: Samples, most: number) => Write>> = {
  0: (_, most) => (row, at, rgba, to) => rgba.fill(255 - (row[at]! * 255) / most, to, to + 3),
  1: (_, most) => (row, at, rgba, to) => rgba.fill((row[at]! * 255) / most, to, to + 3),
  2: (_, most) => (row, at, rgba, to) => {
    for (let part = 0; part < 3; part++) rgba[to + part] = (row[at + part]! * 255) / most;
  },
  3:
    ({ colours }) =>
    (row, at, rgba, to) => {
      for (let part = 0; part < 3; part++) {
        rgba[to + part] = (colours[(part * colours.length) / 3 + row[at]!] ?? 0) >> 8;
      }
    },
  5: (_, most) => (row, at, rgba, to) => {
    const light = 1 - row[at + 3]! / most;
    for (let part = 0; part < 3; part++) rgba[to + part] = 255 * light * (1 - row[at + part]! / most);
  },
};

/** Reads a row's samples one after the other, of 16 bits the upper 8. */
function rowReader({ width, parts, planes, depth }: Samples): (y: number, row: Uint16Array) => void {
  if (![1, 2, 4, 8, 16].includes(depth)) throw new RangeError(`writeColours: ${depth} bits`);
  const beside = planes.length > 1 ? 1 : parts;
  const stride = Math.ceil((width * beside * depth) / 8);
  return (y, row) => {
    for (const [plane, bytes] of planes.entries()) {
      for (let index = 0; index < width * beside; index++) {
        const to = planes.length > 1 ? index * parts + plane : index;
        row[to] = sampleAt(bytes, y * stride, index, depth);
      }
    }
  };
}

function sampleAt(bytes: Uint8Array, start: number, index: number, depth: number): number {
  if (depth === 8) return bytes[start + index]!;
  if (depth === 16) return bytes[start + 2 * index + 1]!;
  const bit = index * depth;
  return (bytes[start + (bit >> 3)]! >> (8 - depth - (bit & 7))) & (2 ** depth - 1);
}
