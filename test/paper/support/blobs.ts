import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Seen } from './raster.ts';

/** A connected dark spot: its centre weighted by darkness, and its extent, all in mm from the picture's corner. */
export interface Blob {
  readonly centre: Point;
  readonly width: number;
  readonly height: number;
  /** Ink in mm^2. */
  readonly area: number;
}

/** All dark spots of a page whose first pixel lies inside the box (mm). */
export function blobs({ picture: { width, height, grey }, mm }: Seen, within: Box): Blob[] {
  const seen = new Uint8Array(grey.length);
  const found: Blob[] = [];
  const pixels = (from: number, most: number): number => Math.min(most, Math.max(0, Math.round(from)));
  for (let row = pixels(within.top / mm.y, height); row < pixels(within.bottom / mm.y, height); row++) {
    for (
      let column = pixels(within.left / mm.x, width);
      column < pixels(within.right / mm.x, width);
      column++
    ) {
      const start = row * width + column;
      if (seen[start] || grey[start]! > LIGHT) continue;
      found.push(grow(start));
    }
  }
  return found;

  function grow(start: number): Blob {
    const stack = [start];
    seen[start] = 1;
    let [weight, sumX, sumY] = [0, 0, 0];
    let [left, right, top, bottom] = [width, 0, height, 0];
    while (stack.length) {
      const at = stack.pop()!;
      const [x, y] = [at % width, Math.floor(at / width)];
      const dark = 255 - grey[at]!;
      weight += dark;
      sumX += dark * x;
      sumY += dark * y;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
      for (const next of [at - 1, at + 1, at - width, at + width]) {
        if (next < 0 || next >= grey.length || seen[next] || grey[next]! > LIGHT) continue;
        seen[next] = 1;
        stack.push(next);
      }
    }
    return {
      centre: { x: (sumX / weight + 0.5) * mm.x, y: (sumY / weight + 0.5) * mm.y },
      width: (right - left + 1) * mm.x,
      height: (bottom - top + 1) * mm.y,
      area: (weight / 255) * mm.x * mm.y,
    };
  }
}

/** Lighter than this is paper. */
const LIGHT = 250;
