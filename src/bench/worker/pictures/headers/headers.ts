/** What the headers of a picture file say of it, before anything is unpacked. */
export interface PictureHeaders {
  /** Size as stored, before it is turned upright. */
  readonly width: number;
  readonly height: number;
  readonly pages: number;
  readonly orientation: Orientation;
  /** Whether its pixels are grey by themselves. */
  readonly grey: boolean;
  /** Whether every viewer shows its pixels as they are: 8 bits deep, red, green and blue or grey, nothing transparent. */
  readonly plain: boolean;
  /** False where the file breaks off. */
  readonly whole: boolean;
  /** The same file without what turns it, so that every browser decodes it as it is stored. */
  readonly unturned: () => Uint8Array;
}

/** The eight ways in which a picture may be stored (EXIF 2.3, tag 274): 1 upright, 6 to be turned right by a quarter. */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/** An orientation as a file states it; whatever is none counts as upright. */
export const orientationOf = (stated: number | undefined): Orientation =>
  stated !== undefined && Number.isInteger(stated) && stated >= 1 && stated <= 8
    ? (stated as Orientation)
    : 1;

export const textAt = (bytes: Uint8Array, at: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + length));

/** The bytes without the stretches given, which lie in order. */
export function without(bytes: Uint8Array, stretches: readonly (readonly [number, number])[]): Uint8Array {
  if (stretches.length === 0) return bytes;
  const starts = [0, ...stretches.map(([, to]) => to)];
  const ends = [...stretches.map(([from]) => from), bytes.length];
  // One piece: a browser may take a file for damaged whose first piece is too short to tell what it is.
  return joined(starts.map((start, index) => bytes.subarray(start, ends[index])));
}

export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
