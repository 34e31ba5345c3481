import type { GreyPicture } from './grey.ts';
import { type Ground, groundAt, isInked } from './ground.ts';

/** One connected patch of ink: its box in pixels (both ends within) and how many pixels it has. */
export interface Region {
  left: number;
  top: number;
  right: number;
  bottom: number;
  area: number;
}

/** The inked patches of a picture, and which one covers a pixel. */
export interface Regions {
  readonly regions: readonly Region[];
  /** The patch at a pixel, or -1 on bare ground. */
  readonly at: (column: number, row: number) => number;
}

/**
 * Finds the patches darker than `share` of the way from ground to ink; pixels that touch by a side or a corner
 * belong together. Works on runs of pixels joined row by row (union-find), so bare ground costs nearly nothing.
 */
export function inkRegions(picture: GreyPicture, ground: Ground, share: number): Regions {
  const { width, height, grey } = picture;
  const starts: number[] = [];
  const ends: number[] = [];
  const parents: number[] = [];
  const firsts = new Uint32Array(height + 1);
  const root = (run: number): number => {
    let top = run;
    while (parents[top] !== top) top = parents[top]!;
    while (parents[run] !== top) {
      const next = parents[run]!;
      parents[run] = top;
      run = next;
    }
    return top;
  };
  let above = 0;
  for (let row = 0; row < height; row++) {
    const first = starts.length;
    firsts[row] = first;
    let open = false;
    for (let start = 0; start < width; start += 32) {
      const middle = start + 16;
      if (!isInked(ground, picture, middle, row)) {
        if (open) ends.push(start - 1);
        open = false;
        continue;
      }
      const level = groundAt(ground, ground.level, picture, middle, row);
      const limit = level - share * groundAt(ground, ground.depth, picture, middle, row);
      const stop = Math.min(start + 32, width);
      for (let column = start; column < stop; column++) {
        const dark = grey[row * width + column]! < limit;
        if (dark === open) continue;
        if (dark) {
          starts.push(column);
          parents.push(parents.length);
        } else ends.push(column - 1);
        open = dark;
      }
    }
    if (open) ends.push(width - 1);
    let other = above;
    for (let run = first; run < starts.length; run++) {
      while (other < first && ends[other]! < starts[run]! - 1) other++;
      for (let touching = other; touching < first && starts[touching]! <= ends[run]! + 1; touching++) {
        const a = root(run);
        const b = root(touching);
        if (a < b) parents[b] = a;
        else parents[a] = b;
      }
    }
    above = first;
  }
  firsts[height] = starts.length;
  return summed(starts, ends, firsts, root);
}

function summed(
  starts: readonly number[],
  ends: readonly number[],
  firsts: Uint32Array,
  root: (run: number) => number,
): Regions {
  const regions: Region[] = [];
  const owner = new Int32Array(starts.length).fill(-1);
  for (let row = 0; row + 1 < firsts.length; row++) {
    for (let run = firsts[row]!; run < firsts[row + 1]!; run++) {
      const top = root(run);
      if (owner[top]! < 0) {
        owner[top] = regions.length;
        regions.push({ left: starts[run]!, top: row, right: ends[run]!, bottom: row, area: 0 });
      }
      owner[run] = owner[top]!;
      const region = regions[owner[run]!]!;
      region.left = Math.min(region.left, starts[run]!);
      region.right = Math.max(region.right, ends[run]!);
      region.bottom = row;
      region.area += ends[run]! - starts[run]! + 1;
    }
  }
  const at = (column: number, row: number): number => {
    if (row < 0 || row + 1 >= firsts.length) return -1;
    let low = firsts[row]!;
    let high = firsts[row + 1]!;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (ends[middle]! < column) low = middle + 1;
      else high = middle;
    }
    return low < firsts[row + 1]! && starts[low]! <= column ? owner[low]! : -1;
  };
  return { regions, at };
}
