import type { GreyPicture } from './grey.ts';
import { type Ground, groundAt, isInked } from './ground.ts';

/** A place darker than what lies about it. */
export interface DarkSpot {
  readonly column: number;
  readonly row: number;
  /** Mean darkness of the spot less that of the square three times as wide round it, in the local contrast. */
  readonly bulge: number;
}

/** A spot is this dark all over, on average, as a share of the way from ground to ink. */
const DARK = 0.6;

/**
 * Looks for spots of one diameter that are dark all over and stand out from a square about them, whatever runs
 * into them: the middle of a star of lines has hardly any rim left, but it is darker than its surroundings.
 * Means over squares come from one table of sums (Crow, SIGGRAPH 1984).
 */
export function darkSpots(picture: GreyPicture, ground: Ground, diameter: number, least: number): DarkSpot[] {
  const { width, height, grey } = picture;
  const inner = Math.max(1, Math.round(0.32 * diameter));
  const outer = Math.max(inner + 2, Math.round(1.2 * diameter));
  const sums = tableOfSums(picture);
  const stride = width + 1;
  const innerArea = (2 * inner + 1) ** 2;
  const ringArea = (2 * outer + 1) ** 2 - innerArea;
  // mostly untouched, so that most of it never takes real memory
  const bulges = new Float32Array(width * height);
  const found: number[] = [];
  for (let row = outer; row < height - outer; row++) {
    const top = (row - inner) * stride - inner;
    const bottom = (row + inner + 1) * stride - inner;
    const far = 2 * inner + 1;
    for (let start = outer; start < width - outer; start += 32) {
      if (!isInked(ground, picture, start + 16, row)) continue;
      const stop = Math.min(start + 32, width - outer);
      const level = groundAt(ground, ground.level, picture, start + 16, row);
      const depth = groundAt(ground, ground.depth, picture, start + 16, row);
      const dark = (level - DARK * depth) * innerArea;
      const middle = level - 0.5 * depth;
      for (let column = start; column < stop; column++) {
        if (grey[row * width + column]! > middle) continue;
        const spot =
          sums[bottom + column + far]! -
          sums[bottom + column]! -
          sums[top + column + far]! +
          sums[top + column]!;
        if (spot > dark) continue;
        const upper = (row - outer) * stride + column - outer;
        const lower = (row + outer + 1) * stride + column - outer;
        const wide = 2 * outer + 1;
        const ring = sums[lower + wide]! - sums[lower]! - sums[upper + wide]! + sums[upper]! - spot;
        const bulge = (ring / ringArea - spot / innerArea) / depth;
        if (bulge < least) continue;
        bulges[row * width + column] = bulge;
        found.push(row * width + column);
      }
    }
  }
  return highest(found, bulges, width, Math.round(0.6 * diameter));
}

function tableOfSums({ width, height, grey }: GreyPicture): Uint32Array {
  const stride = width + 1;
  // sums wrap round at 2^32; differences over a square are right all the same once taken modulo 2^32
  const sums = new Uint32Array(stride * (height + 1));
  for (let row = 0; row < height; row++) {
    let line = 0;
    const from = row * width;
    const to = (row + 1) * stride + 1;
    for (let column = 0; column < width; column++) {
      line += grey[from + column]!;
      sums[to + column] = sums[to + column - stride]! + line;
    }
  }
  return sums;
}

function highest(found: readonly number[], bulges: Float32Array, width: number, reach: number): DarkSpot[] {
  const spots: DarkSpot[] = [];
  for (const at of found) {
    const bulge = bulges[at]!;
    let wins = true;
    for (let dy = -reach; wins && dy <= reach; dy++) {
      for (let dx = -reach; dx <= reach; dx++) {
        const other = bulges[at + dy * width + dx] ?? 0;
        if (other < bulge) continue;
        if (other > bulge || dy < 0 || (dy === 0 && dx < 0)) {
          wins = false;
          break;
        }
      }
    }
    if (wins) spots.push({ column: at % width, row: Math.floor(at / width), bulge });
  }
  return spots;
}
