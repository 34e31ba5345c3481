import type { GreyPicture } from '#base/picture/grey.ts';

/** How many rays look out from a candidate's centre. */
export const RAYS = 36;

/** Samples a ray, from the centre outwards. */
export const STEPS = 18;

/** Length of a ray in expected radii. */
const REACH = 2.2;

export const COS = Float64Array.from({ length: RAYS }, (_, ray) => Math.cos((2 * Math.PI * ray) / RAYS));

export const SIN = Float64Array.from({ length: RAYS }, (_, ray) => Math.sin((2 * Math.PI * ray) / RAYS));

/** Length of one step in expected radii. */
export const STEP = REACH / (STEPS - 1);

/** The sample at so many expected radii. */
export const stepAt = (radii: number): number => Math.round(radii / STEP);

/** Greys along all rays from a centre, ray after ray, by linear interpolation; beyond the picture its edge goes on. */
export function sampleRays(
  { width, height, grey }: GreyPicture,
  column: number,
  row: number,
  expected: number,
  to: Float32Array,
): void {
  const reach = REACH * expected + 1;
  const inside =
    column - reach >= 0 && row - reach >= 0 && column + reach < width - 1 && row + reach < height - 1;
  for (let ray = 0; ray < RAYS; ray++) {
    const dx = COS[ray]! * STEP * expected;
    const dy = SIN[ray]! * STEP * expected;
    let x = column;
    let y = row;
    for (let step = 0; step < STEPS; step++, x += dx, y += dy) {
      const left = inside ? x | 0 : Math.max(0, Math.min(width - 2, Math.floor(x)));
      const top = inside ? y | 0 : Math.max(0, Math.min(height - 2, Math.floor(y)));
      const fx = inside ? x - left : Math.max(0, Math.min(1, x - left));
      const fy = inside ? y - top : Math.max(0, Math.min(1, y - top));
      const at = top * width + left;
      const upper = grey[at]! + (grey[at + 1]! - grey[at]!) * fx;
      const lower = grey[at + width]! + (grey[at + width + 1]! - grey[at + width]!) * fx;
      to[ray * STEPS + step] = upper + (lower - upper) * fy;
    }
  }
}
