import type { GreyPicture } from './grey.ts';

/**
 * What lies under the ink, tile by tile: how light the bare ground is, and by how much the darkest ink around
 * is darker. Between the tiles' middles it is read with `groundAt` by linear interpolation.
 */
export interface Ground {
  readonly tile: number;
  readonly columns: number;
  readonly rows: number;
  /** Grey of the bare ground at the middle of each tile, 0 to 255. */
  readonly level: Float32Array;
  /** Ground minus ink round each tile, never far under `contrast`. */
  readonly depth: Float32Array;
  /** Ground minus ink as it is in most inked places of the picture; 0 for a picture of one grey. */
  readonly contrast: number;
  /** 1 for tiles that have ink in them or next to them, else 0. */
  readonly inked: Uint8Array;
  /** Standard deviation of the grain of the bare ground. */
  readonly grain: number;
}

/** Whether there is anything darker than the ground's own grain. */
export const hasInk = (ground: Ground): boolean => ground.contrast >= Math.max(10, 6 * ground.grain);

/** Side of a tile in pixels: several dots wide, so that no dot fills one, and narrow against changes of light. */
const TILE = 32;
/** The ground is taken as this share of a tile's pixels from the darkest: most of a tile is bare. */
const GROUND_SHARE = 0.75;
/** A tile whose darkest pixels reach less of the usual contrast than this is bare. */
const LEAST_INK = 0.25;
/** Ink is taken as this share from the darkest, so that single bad pixels do not count. */
const INK_SHARE = 0.01;

export function groundOf(picture: GreyPicture): Ground {
  const columns = Math.max(1, Math.round(picture.width / TILE));
  const rows = Math.max(1, Math.round(picture.height / TILE));
  const level = new Float32Array(columns * rows);
  const depth = new Float32Array(columns * rows);
  const spread = new Float32Array(columns * rows);
  const histogram = new Uint32Array(256);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const count = countGreys(picture, column / columns, row / rows, 1 / columns, 1 / rows, histogram);
      const tile = row * columns + column;
      level[tile] = quantile(histogram, count * GROUND_SHARE);
      spread[tile] = level[tile]! - quantile(histogram, count / 2);
      depth[tile] = level[tile]! - quantile(histogram, count * INK_SHARE);
    }
  }
  const contrast = contrastOf(depth);
  // the upper quartile of a normal distribution lies 0.674 standard deviations over its middle
  const grain = spread.sort()[spread.length >> 1]! / 0.674;
  const deepest = highestAround(depth, columns, rows);
  const inked = Uint8Array.from(deepest, (deep) => (deep >= LEAST_INK * contrast ? 1 : 0));
  const smooth = medianOfNeighbours(level, columns, rows);
  const wide = deepest.map((deep) => Math.max(0.45 * contrast, Math.min(deep, 1.2 * contrast)));
  return { tile: TILE, columns, rows, level: smooth, depth: wide, contrast, inked, grain };
}

/** Whether there is ink within about a tile of a pixel: where there is none, nothing need be looked for. */
export function isInked(ground: Ground, picture: GreyPicture, column: number, row: number): boolean {
  const x = Math.min(ground.columns - 1, Math.floor((column * ground.columns) / picture.width));
  const y = Math.min(ground.rows - 1, Math.floor((row * ground.rows) / picture.height));
  return ground.inked[y * ground.columns + x] === 1;
}

/** Reads a tile map (`ground.level` or `ground.depth`) at a pixel of the picture it was made from. */
export function groundAt(
  ground: Ground,
  map: Float32Array,
  picture: GreyPicture,
  column: number,
  row: number,
): number {
  const across = clamp(((column + 0.5) * ground.columns) / picture.width - 0.5, 0, ground.columns - 1);
  const down = clamp(((row + 0.5) * ground.rows) / picture.height - 0.5, 0, ground.rows - 1);
  const left = Math.min(Math.floor(across), Math.max(0, ground.columns - 2));
  const top = Math.min(Math.floor(down), Math.max(0, ground.rows - 2));
  const right = Math.min(left + 1, ground.columns - 1);
  const bottom = Math.min(top + 1, ground.rows - 1);
  const x = across - left;
  const y = down - top;
  const upper = map[top * ground.columns + left]! * (1 - x) + map[top * ground.columns + right]! * x;
  const lower = map[bottom * ground.columns + left]! * (1 - x) + map[bottom * ground.columns + right]! * x;
  return upper * (1 - y) + lower * y;
}

const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));

/** Every second pixel of every second row is enough: a tile has hundreds left. */
function countGreys(
  picture: GreyPicture,
  x: number,
  y: number,
  width: number,
  height: number,
  histogram: Uint32Array,
): number {
  histogram.fill(0);
  const left = Math.floor(x * picture.width);
  const right = Math.max(left + 1, Math.floor((x + width) * picture.width + 1e-6));
  const top = Math.floor(y * picture.height);
  const bottom = Math.max(top + 1, Math.floor((y + height) * picture.height + 1e-6));
  let count = 0;
  for (let row = top; row < bottom && row < picture.height; row += 2) {
    const from = row * picture.width;
    for (let column = left; column < right && column < picture.width; column += 2) {
      histogram[picture.grey[from + column]!]!++;
      count++;
    }
  }
  return count;
}

function quantile(histogram: Uint32Array, rank: number): number {
  let seen = 0;
  for (let grey = 0; grey < 256; grey++) {
    seen += histogram[grey]!;
    if (seen > rank) return grey;
  }
  return 255;
}

/** Splits the tiles into bare and inked where the two differ most (Otsu 1979) and takes the inked ones' median. */
function contrastOf(depth: Float32Array): number {
  const sorted = Float32Array.from(depth).sort();
  const total = sorted.reduce((sum, value) => sum + value, 0);
  let best = 0;
  let split = 0;
  let lower = 0;
  for (let count = 1; count < sorted.length; count++) {
    lower += sorted[count - 1]!;
    const between = lower / count - (total - lower) / (sorted.length - count);
    const parted = between * between * count * (sorted.length - count);
    if (parted > best) {
      best = parted;
      split = count;
    }
  }
  return sorted[(split + sorted.length) >> 1] ?? 0;
}

function medianOfNeighbours(map: Float32Array, columns: number, rows: number): Float32Array {
  const result = new Float32Array(map.length);
  const around: number[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      around.length = 0;
      for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
        for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
          around.push(map[y * columns + x]!);
        }
      }
      around.sort((a, b) => a - b);
      result[row * columns + column] = around[around.length >> 1]!;
    }
  }
  return result;
}

function highestAround(map: Float32Array, columns: number, rows: number): Float32Array {
  const result = new Float32Array(map.length);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      let highest = 0;
      for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
        for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
          highest = Math.max(highest, map[y * columns + x]!);
        }
      }
      result[row * columns + column] = highest;
    }
  }
  return result;
}
