import type { Point } from '#base/geometry/point.ts';

export interface MirrorFit {
  readonly through: Point;
  /** Of length 1. */
  readonly direction: Point;
  /** Sum of squared distances of each point from its partner's mirror image, a pair counted once. */
  readonly squares: number;
}

export function mirrored(
  { through, direction }: Pick<MirrorFit, 'through' | 'direction'>,
  { x, y }: Point,
): Point {
  const dx = x - through.x;
  const dy = y - through.y;
  const along = 2 * (dx * direction.x + dy * direction.y);
  return { x: through.x + along * direction.x - dx, y: through.y + along * direction.y - dy };
}

/**
 * The line in which the points of each pair mirror each other best: it goes through the middle of all of them, and its
 * double angle is that of the sum of products of partners, taken as complex numbers. Null without pairs.
 */
export function fitMirror(pairs: readonly (readonly [Point, Point])[]): MirrorFit | null {
  if (pairs.length === 0) return null;
  let [mx, my] = [0, 0];
  for (const [p, q] of pairs) {
    mx += (p.x + q.x) / (2 * pairs.length);
    my += (p.y + q.y) / (2 * pairs.length);
  }
  let [real, imaginary] = [0, 0];
  for (const [p, q] of pairs) {
    const [px, py, qx, qy] = [p.x - mx, p.y - my, q.x - mx, q.y - my];
    real += px * qx - py * qy;
    imaginary += px * qy + py * qx;
  }
  const angle = Math.atan2(imaginary, real) / 2;
  const fit = { through: { x: mx, y: my }, direction: { x: Math.cos(angle), y: Math.sin(angle) } };
  let squares = 0;
  for (const [p, q] of pairs) {
    const image = mirrored(fit, p);
    squares += (image.x - q.x) ** 2 + (image.y - q.y) ** 2;
  }
  return { ...fit, squares };
}
