import type { GreyPicture } from '#base/picture/grey.ts';
import { normal, type Random } from '#base/random.ts';

/** A page to draw ink on, one share of ink a pixel from 0 to 1. */
export interface Canvas {
  readonly width: number;
  readonly height: number;
  readonly ink: Float32Array;
}

export const canvas = (width: number, height: number): Canvas => ({
  width,
  height,
  ink: new Float32Array(width * height),
});

/** Ink wherever the signed distance to a shape's edge (negative inside) is under half a pixel. */
function paint(page: Canvas, box: number[], distance: (x: number, y: number) => number, ink: number): void {
  const [left = 0, top = 0, right = 0, bottom = 0] = box;
  for (let y = Math.max(0, Math.floor(top)); y <= Math.min(page.height - 1, bottom); y++) {
    for (let x = Math.max(0, Math.floor(left)); x <= Math.min(page.width - 1, right); x++) {
      const share = ink * Math.max(0, Math.min(1, 0.5 - distance(x, y)));
      const at = y * page.width + x;
      page.ink[at] = Math.max(page.ink[at]!, share);
    }
  }
}

export function disc(page: Canvas, x: number, y: number, radius: number, ink = 1): void {
  const box = [x - radius - 1, y - radius - 1, x + radius + 1, y + radius + 1];
  paint(page, box, (px, py) => Math.hypot(px - x, py - y) - radius, ink);
}

/** A straight line with blunt round ends. */
export function strip(
  page: Canvas,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  width: number,
  ink = 1,
): void {
  const half = width / 2;
  const box = [
    Math.min(x1, x2) - half - 1,
    Math.min(y1, y2) - half - 1,
    Math.max(x1, x2) + half + 1,
    Math.max(y1, y2) + half + 1,
  ];
  const length = Math.hypot(x2 - x1, y2 - y1);
  const ux = (x2 - x1) / length;
  const uy = (y2 - y1) / length;
  paint(
    page,
    box,
    (px, py) => {
      const along = Math.max(0, Math.min(length, (px - x1) * ux + (py - y1) * uy));
      return Math.hypot(px - x1 - along * ux, py - y1 - along * uy) - half;
    },
    ink,
  );
}

/** The page as a scanner gives it: light paper, dark ink, a little blur and noise. */
export function finished(page: Canvas, random: Random, paper = 235, dark = 40, noise = 3): GreyPicture {
  const { width, height, ink } = page;
  const grey = new Uint8Array(width * height);
  const at = (x: number, y: number): number =>
    ink[Math.max(0, Math.min(height - 1, y)) * width + Math.max(0, Math.min(width - 1, x))]!;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const blurred =
        (4 * at(x, y) +
          2 * (at(x - 1, y) + at(x + 1, y) + at(x, y - 1) + at(x, y + 1)) +
          at(x - 1, y - 1) +
          at(x + 1, y - 1) +
          at(x - 1, y + 1) +
          at(x + 1, y + 1)) /
        16;
      const value = paper + (dark - paper) * blurred + noise * normal(random);
      grey[y * width + x] = Math.max(0, Math.min(255, Math.round(value)));
    }
  }
  return { width, height, grey };
}
