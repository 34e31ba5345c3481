import type { PixelPoint } from '#base/geometry/point.ts';
import type { Field } from './noise.ts';

/**
 * One layer of ink: for every pixel how much of it is covered, 0 to 1. Shapes are drawn by their signed distance, so
 * that their edges are smooth to a fraction of a pixel, and that distance is shaken by a field to make edges rough.
 */
export class Layer {
  readonly cover: Float32Array;
  readonly width: number;
  readonly height: number;

  constructor(width: number, height: number) {
    this.width = width;
    this.height = height;
    this.cover = new Float32Array(width * height);
  }

  disc(at: PixelPoint, radius: number, strength: number, rough: (x: number, y: number) => number): void {
    this.shade(at.column, at.row, radius + 2, (x, y) => {
      const from = Math.hypot(x - at.column, y - at.row);
      return strength * clamp(0.5 + radius - from + rough(x, y));
    });
  }

  /** A straight stroke with round ends, cut in short pieces so that a slanted one does not visit a whole page. */
  stroke(
    from: PixelPoint,
    to: PixelPoint,
    width: number,
    strength: number,
    rough: (x: number, y: number) => number,
  ): void {
    const dx = to.column - from.column;
    const dy = to.row - from.row;
    const size = Math.hypot(dx, dy);
    const pieces = Math.max(1, Math.ceil(size / 24));
    for (let piece = 0; piece < pieces; piece++) {
      const t = (piece + 0.5) / pieces;
      const reach = size / pieces / 2 + width / 2 + 2;
      this.shade(from.column + t * dx, from.row + t * dy, reach, (x, y) => {
        const along = size === 0 ? 0 : ((x - from.column) * dx + (y - from.row) * dy) / (size * size);
        const near = Math.min(1, Math.max(0, along));
        const off = Math.hypot(x - from.column - near * dx, y - from.row - near * dy);
        return strength * clamp(0.5 + width / 2 - off + rough(x, y));
      });
    }
  }

  /** Fills a polygon by rows of pixel centres; its edges are as sharp as pixels are. */
  fill(corners: readonly PixelPoint[], strength: number): void {
    const rows = corners.map((corner) => corner.row);
    const first = Math.max(0, Math.ceil(Math.min(...rows)));
    const last = Math.min(this.height - 1, Math.floor(Math.max(...rows)));
    for (let row = first; row <= last; row++) {
      const crossings = crossingsOf(corners, row);
      for (let k = 0; k + 1 < crossings.length; k += 2) {
        const start = Math.max(0, Math.ceil(crossings[k]!));
        const end = Math.min(this.width - 1, Math.floor(crossings[k + 1]!));
        for (let column = start; column <= end; column++) {
          const index = row * this.width + column;
          if (this.cover[index]! < strength) this.cover[index] = strength;
        }
      }
    }
  }

  /** Visits the pixels within `reach` of a place and keeps the stronger of what is there and what is drawn. */
  shade(column: number, row: number, reach: number, ink: (x: number, y: number) => number): void {
    const left = Math.max(0, Math.ceil(column - reach));
    const right = Math.min(this.width - 1, Math.floor(column + reach));
    const bottom = Math.min(this.height - 1, Math.floor(row + reach));
    for (let y = Math.max(0, Math.ceil(row - reach)); y <= bottom; y++) {
      for (let x = left; x <= right; x++) {
        const drawn = ink(x, y);
        const index = y * this.width + x;
        if (drawn > this.cover[index]!) this.cover[index] = drawn;
      }
    }
  }

  /** Share of ink on a ring round a place. */
  ringCover(at: PixelPoint, inner: number, outer: number): number {
    let sum = 0;
    let count = 0;
    for (let y = Math.ceil(at.row - outer); y <= at.row + outer; y++) {
      for (let x = Math.ceil(at.column - outer); x <= at.column + outer; x++) {
        const from = Math.hypot(x - at.column, y - at.row);
        if (from < inner || from > outer || x < 0 || y < 0 || x >= this.width || y >= this.height) continue;
        sum += this.cover[y * this.width + x]!;
        count++;
      }
    }
    return count === 0 ? 0 : sum / count;
  }

  /** Blurs the layer by a Gaussian of standard deviation `sigma` pixels. */
  blur(sigma: number): void {
    if (sigma < 0.2) return;
    const reach = Math.ceil(2.5 * sigma);
    const weights = Array.from({ length: 2 * reach + 1 }, (_, k) =>
      Math.exp(-((k - reach) ** 2) / (2 * sigma ** 2)),
    );
    const total = weights.reduce((a, b) => a + b);
    const kernel = Float32Array.from(weights, (weight) => weight / total);
    const { width, height, cover } = this;
    const line = new Float32Array(Math.max(width, height));
    const pass = (start: number, step: number, count: number): void => {
      let some = false;
      for (let k = 0; k < count; k++) {
        const value = cover[start + k * step]!;
        line[k] = value;
        if (value !== 0) some = true;
      }
      if (!some) return;
      for (let k = 0; k < count; k++) {
        let sum = 0;
        for (let n = -reach; n <= reach; n++) {
          const at = k + n < 0 ? 0 : k + n >= count ? count - 1 : k + n;
          sum += kernel[n + reach]! * line[at]!;
        }
        cover[start + k * step] = sum;
      }
    };
    for (let row = 0; row < height; row++) pass(row * width, 1, width);
    for (let column = 0; column < width; column++) pass(column, width, height);
  }
}

/** Where a row cuts the sides of a polygon, from left to right. */
export function crossingsOf(corners: readonly PixelPoint[], row: number): number[] {
  const crossings: number[] = [];
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % corners.length]!;
    if (a.row > row === b.row > row) return;
    crossings.push(a.column + ((row - a.row) / (b.row - a.row)) * (b.column - a.column));
  });
  return crossings.sort((a, b) => a - b);
}

/** Shakes edges by up to `size` pixels, with bumps about `grain` pixels wide. */
export const roughBy =
  (field: Field, size: number, grain: number): ((x: number, y: number) => number) =>
  (x, y) =>
    size * field(x / grain, y / grain);

const clamp = (value: number): number => Math.min(1, Math.max(0, value));
