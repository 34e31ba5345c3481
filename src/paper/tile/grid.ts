import { type Box, heightOf, widthOf } from '#base/geometry/box.ts';

/** How a pattern is spread over sheets: columns and rows, and where each sheet's window begins, mm. */
export interface TileGrid {
  readonly columns: Axis;
  readonly rows: Axis;
}

/** One direction of the grid: `starts[k]` is where window k begins in the pattern; all windows are `size` long. */
export interface Axis {
  readonly starts: readonly number[];
  readonly size: number;
}

/** How many windows of `size` that overlap by `overlap` cover `length`: exactly n windows long gives n. */
export function tilesNeeded(length: number, size: number, overlap: number): number {
  if (length <= size + TOLERANCE) return 1;
  return Math.ceil((length - overlap - TOLERANCE) / (size - overlap));
}

/** Windows over the content, with what they cover too much shared evenly between both ends. */
export function tileGrid(content: Box, room: { width: number; height: number }, overlap: number): TileGrid {
  return {
    columns: axis(content.left, widthOf(content), room.width, overlap),
    rows: axis(content.top, heightOf(content), room.height, overlap),
  };
}

/** 'A1' for the first row and column, 'B3' for the second row's third sheet; after Z comes AA. */
export function tileName(row: number, column: number): string {
  let letters = '';
  for (let rest = row; rest >= 0; rest = Math.floor(rest / 26) - 1) {
    letters = String.fromCharCode(65 + (rest % 26)) + letters;
  }
  return `${letters}${column + 1}`;
}

/** Far below what a printer can place, far above the noise of sums of decimal fractions. */
const TOLERANCE = 1e-6;

function axis(from: number, length: number, size: number, overlap: number): Axis {
  const count = tilesNeeded(length, size, overlap);
  const covered = count * size - (count - 1) * overlap;
  const first = from - (covered - length) / 2;
  return { size, starts: Array.from({ length: count }, (_, k) => first + k * (size - overlap)) };
}
