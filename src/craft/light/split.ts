import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import type { Regions } from '#base/picture/regions.ts';
import type { Moments } from './shape.ts';

/**
 * The centres of the holes that run together in one patch: the parts into which it falls as the level rises, where they
 * are about as large as holes and as far apart; `amplitude` is the grey by which they differ from the card. A hair across a hole parts it as well, but into halves that lie closer.
 */
export function clustersIn(
  { width, grey }: GreyPicture,
  patches: Regions,
  index: number,
  amplitude: number,
  holeArea: number,
): PixelPoint[] {
  const { left, right, top, bottom } = patches.regions[index]!;
  const [columns, rows] = [right - left + 1, bottom - top + 1];
  let darkest = 255;
  const depth = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const value = grey[(top + row) * width + left + column]!;
      const mine = patches.at(left + column, top + row) === index;
      depth[row * columns + column] = mine ? value : 255;
      if (mine) darkest = Math.min(darkest, value);
    }
  }
  const apart = 0.8 * Math.sqrt((4 * holeArea) / Math.PI);
  for (let share = 0.6; share >= 0.08; share -= 0.08) {
    const parts = partsUnder(depth, columns, rows, darkest + share * amplitude);
    const large = parts.filter(({ area }) => area >= 0.2 * holeArea);
    if (large.length < 2 || !areApart(large, apart)) continue;
    return large.map(({ column, row }) => ({ column: left + column, row: top + row }));
  }
  return [];
}

/**
 * Where two holes lie that have run together so far that no level parts them, by the moments of both: along their line these
 * are larger than across it by the square of half their distance.
 */
export function twinCentres({ column, row, xx, xy, yy }: PixelPoint & Moments): PixelPoint[] {
  const half = Math.sqrt(2 * Math.hypot((xx - yy) / 2, xy));
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return [-1, 1].map((sign) => ({
    column: column + sign * half * Math.cos(angle),
    row: row + sign * half * Math.sin(angle),
  }));
}

interface Part extends PixelPoint {
  readonly area: number;
}

function partsUnder(depth: Float32Array, columns: number, rows: number, level: number): Part[] {
  const seen = new Uint8Array(depth.length);
  const parts: Part[] = [];
  const stack: number[] = [];
  for (let start = 0; start < depth.length; start++) {
    if (seen[start] || depth[start]! > level) continue;
    let [area, sumX, sumY] = [0, 0, 0];
    seen[start] = 1;
    stack.push(start);
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      const [column, row] = [at % columns, Math.floor(at / columns)];
      area++;
      sumX += column;
      sumY += row;
      for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
        for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
          const other = y * columns + x;
          if (seen[other] || depth[other]! > level) continue;
          seen[other] = 1;
          stack.push(other);
        }
      }
    }
    parts.push({ column: sumX / area, row: sumY / area, area });
  }
  return parts;
}

const areApart = (parts: readonly Part[], least: number): boolean =>
  parts.every((one, k) =>
    parts.slice(k + 1).every((other) => Math.hypot(one.column - other.column, one.row - other.row) >= least),
  );
