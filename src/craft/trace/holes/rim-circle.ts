import { COS, RAYS, SIN } from './rays.ts';

/**
 * Centre and radius of the circle through the free edges, blind to lines: rays that leave the circle are weighed
 * down (Tukey's biweight), and the radius is held near the page's own, so that even a third of a rim is enough.
 * Linear in the shift, since the edge at angle a lies at `radius + x cos a + y sin a`.
 */
export function fitCircle(
  edge: Float64Array,
  facing: Float64Array,
  free: Uint8Array,
  expected: number,
  fits: Uint8Array,
  round: number,
): { x: number; y: number; radius: number } {
  let x = 0;
  let y = 0;
  let radius = expected;
  // lines only ever add ink: edges beyond the circle are trusted less than edges within it
  const within = (round === 0 ? 0.5 : 0.8) * expected;
  const beyond = (round === 0 ? 0.5 : 0.4) * expected;
  for (let pass = 0; pass < 4; pass++) {
    let w0 = 0.06 * RAYS;
    let wx = 0;
    let wy = 0;
    let wxx = 0.06 * RAYS;
    let wyy = 0.06 * RAYS;
    let wxy = 0;
    let s0 = w0 * expected;
    let sx = 0;
    let sy = 0;
    for (let ray = 0; ray < RAYS; ray++) {
      if (facing[ray] === 0) continue;
      const cos = COS[ray]!;
      const sin = SIN[ray]!;
      const gap = edge[ray]! - radius - x * cos - y * sin;
      const off = gap / (gap > 0 ? beyond : within);
      if (off <= -1 || off >= 1) continue;
      const root = 1 - off * off;
      const weight = root * root * facing[ray]!;
      w0 += weight;
      wx += weight * cos;
      wy += weight * sin;
      wxx += weight * cos * cos;
      wyy += weight * sin * sin;
      wxy += weight * cos * sin;
      s0 += weight * edge[ray]!;
      sx += weight * edge[ray]! * cos;
      sy += weight * edge[ray]! * sin;
    }
    const c0 = wxx * wyy - wxy * wxy;
    const c1 = wx * wyy - wxy * wy;
    const c2 = wx * wxy - wxx * wy;
    const det = w0 * c0 - wx * c1 + wy * c2;
    radius = (s0 * c0 - wx * (sx * wyy - wxy * sy) + wy * (sx * wxy - wxx * sy)) / det;
    x = (w0 * (sx * wyy - wxy * sy) - s0 * c1 + wy * (wx * sy - sx * wy)) / det;
    y = (w0 * (wxx * sy - sx * wxy) - wx * (wx * sy - sx * wy) + s0 * c2) / det;
  }
  for (let ray = 0; ray < RAYS; ray++) {
    const off = edge[ray]! - radius - x * COS[ray]! - y * SIN[ray]!;
    fits[ray] = free[ray] && Math.abs(off) < 0.2 * expected ? 1 : 0;
  }
  return { x, y, radius };
}
