/** A symmetric 2 by 2 matrix: second moments, in any unit. */
export interface Moments {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** What moments in pixels are on the sheet, for a picture that stretches it by `[dc/dx, dc/dy, dr/dx, dr/dy]`. */
export function onSheet(
  { xx, xy, yy }: Moments,
  [a, b, c, d]: readonly [number, number, number, number],
): Moments {
  const det = a * d - b * c;
  const [p, q, r, s] = [d / det, -b / det, -c / det, a / det];
  return {
    xx: p * p * xx + 2 * p * q * xy + q * q * yy,
    xy: p * r * xx + (p * s + q * r) * xy + q * s * yy,
    yy: r * r * xx + 2 * r * s * xy + s * s * yy,
  };
}

/** The shape of `hole` if a hole of shape `usual` is really round: what tilt does to all holes is taken out. */
export function relativeTo({ xx, xy, yy }: Moments, usual: Moments): Moments {
  const size = Math.sqrt(usual.xx * usual.yy - usual.xy ** 2);
  if (!(size > 0)) return { xx, xy, yy };
  // the inverse root of the usual shape, scaled to keep areas: (A + I)^-1 up to a factor, for A of determinant 1
  const [ux, uxy, uy] = [usual.xx / size + 1, usual.xy / size, usual.yy / size + 1];
  const root = Math.sqrt(ux + uy);
  const [a, b, d] = [uy / root, -uxy / root, ux / root];
  return {
    xx: a * a * xx + 2 * a * b * xy + b * b * yy,
    xy: a * b * xx + (a * d + b * b) * xy + b * d * yy,
    yy: b * b * xx + 2 * b * d * xy + d * d * yy,
  };
}

/** Longest by shortest diameter. */
export function aspectOf({ xx, xy, yy }: Moments): number {
  const half = (xx + yy) / 2;
  const off = Math.hypot((xx - yy) / 2, xy);
  return Math.sqrt((half + off) / Math.max(half - off, 1e-6 * half));
}

/** The direction of the longest diameter, radians from x towards y, from -pi/2 up to pi/2. */
export function directionOf({ xx, xy, yy }: Moments): number {
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return angle >= Math.PI / 2 ? angle - Math.PI : angle;
}

/** A needle that leans by `a` smears a hole by thickness times tan a; the mean diameter is that of an equal circle. */
export const leanOf = (diameter: number, aspect: number, thickness: number): number =>
  (Math.atan(((diameter / Math.sqrt(aspect)) * (aspect - 1)) / thickness) * 180) / Math.PI;
