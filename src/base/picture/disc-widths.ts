import type { GreyPicture } from './grey.ts';
import { type Ground, groundAt, isInked } from './ground.ts';

/**
 * Measures dark discs of any size up to `widest` pixels: from every edge pixel the ink is crossed along the slope
 * to its far side. The crossings of a line run side by side, all in one direction; those of a disc share their
 * middle and come from all directions. Returns the widths of the discs so found, in no order.
 */
export function discWidths(picture: GreyPicture, ground: Ground, widest: number): number[] {
  const { width, height, grey } = picture;
  const columns = (width >> 1) + 1;
  const rows = (height >> 1) + 1;
  const counts = new Uint16Array(columns * rows);
  const widths = new Float32Array(columns * rows);
  const evenX = new Float32Array(columns * rows);
  const evenY = new Float32Array(columns * rows);
  const touched: number[] = [];
  for (let row = 2; row < height - 2; row++) {
    for (let start = 2; start < width - 2; start += 32) {
      if (!isInked(ground, picture, start + 16, row)) continue;
      const stop = Math.min(start + 32, width - 2);
      const depth = groundAt(ground, ground.depth, picture, start + 16, row);
      const half = groundAt(ground, ground.level, picture, start + 16, row) - depth / 2;
      for (let column = start; column < stop; column++) {
        const at = row * width + column;
        const here = grey[at]!;
        // one pixel a crossing of the half-way level: dark itself, with a light neighbour by a side
        if (here >= half) continue;
        if (
          grey[at - 1]! < half &&
          grey[at + 1]! < half &&
          grey[at - width]! < half &&
          grey[at + width]! < half
        )
          continue;
        const falling = grey[at + width + 1]! - grey[at - width - 1]!;
        const rising = grey[at - width + 1]! - grey[at + width - 1]!;
        const across = falling + rising + 2 * (grey[at + 1]! - grey[at - 1]!);
        const down = falling - rising + 2 * (grey[at + width]! - grey[at - width]!);
        const slope = Math.hypot(across, down);
        if (slope < 0.8 * depth) continue;
        const dx = -across / slope;
        const dy = -down / slope;
        const far = crossing(picture, column, row, dx, dy, half, widest);
        if (far < 0) continue;
        const near = (half - here) / (slope / 8);
        const length = far + Math.min(1, near);
        const middle = (far - Math.min(1, near)) / 2;
        const cell = (Math.round(row + dy * middle) >> 1) * columns + (Math.round(column + dx * middle) >> 1);
        if (counts[cell] === 0) touched.push(cell);
        counts[cell]!++;
        widths[cell]! += length;
        evenX[cell]! += dx * dx - dy * dy;
        evenY[cell]! += 2 * dx * dy;
      }
    }
  }
  return discsAmong(touched, columns, counts, widths, evenX, evenY);
}

/** How far it is from a dark pixel along a direction to where the ink ends, or -1 beyond `widest`. */
function crossing(
  picture: GreyPicture,
  column: number,
  row: number,
  dx: number,
  dy: number,
  half: number,
  widest: number,
): number {
  const { width, height, grey } = picture;
  let before = grey[row * width + column]!;
  for (let step = 1; step <= widest; step++) {
    const x = column + dx * step;
    const y = row + dy * step;
    const left = Math.floor(x);
    const top = Math.floor(y);
    if (left < 0 || top < 0 || left >= width - 1 || top >= height - 1) return -1;
    const at = top * width + left;
    const fx = x - left;
    const upper = grey[at]! * (1 - fx) + grey[at + 1]! * fx;
    const lower = grey[at + width]! * (1 - fx) + grey[at + width + 1]! * fx;
    const here = upper + (lower - upper) * (y - top);
    if (here >= half) return step - 1 + (half - before) / Math.max(1, here - before);
    before = here;
  }
  return -1;
}

/** A disc shows about as many crossings as it has edge pixels, from directions that balance. */
function discsAmong(
  touched: readonly number[],
  columns: number,
  counts: Uint16Array,
  widths: Float32Array,
  evenX: Float32Array,
  evenY: Float32Array,
): number[] {
  const found: number[] = [];
  for (const cell of touched) {
    let count = 0;
    let sum = 0;
    let x = 0;
    let y = 0;
    let highest = true;
    for (let dy = -1; dy <= 1; dy++) {
      for (let dx = -1; dx <= 1; dx++) {
        const other = cell + dy * columns + dx;
        const votes = counts[other] ?? 0;
        if (votes > counts[cell]! || (votes === counts[cell]! && other < cell)) highest = false;
        count += votes;
        sum += widths[other] ?? 0;
        x += evenX[other] ?? 0;
        y += evenY[other] ?? 0;
      }
    }
    const width = sum / count;
    if (!highest || count < 1.2 * width || Math.hypot(x, y) > 0.4 * count) continue;
    found.push(width);
  }
  return found;
}
