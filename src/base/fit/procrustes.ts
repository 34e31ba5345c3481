import type { Affine } from '#base/geometry/affine.ts';
import { applyAffine } from '#base/geometry/affine.ts';
import type { Point } from '#base/geometry/point.ts';

export interface SimilarityFit {
  readonly map: Affine;
  readonly scale: number;
  /** Radians, clockwise on a sheet whose y runs down. */
  readonly angle: number;
  /** Sum of squared distances that are left. */
  readonly squares: number;
}

/**
 * The turn, shift and (unless `keepSize`) change of size that bring `from` nearest to `onto`, point by point:
 * ordinary Procrustes analysis without reflection (Dryden & Mardia, Statistical Shape Analysis). Null for fewer than
 * two different places.
 */
export function fitSimilarity(
  from: readonly Point[],
  onto: readonly Point[],
  keepSize = false,
): SimilarityFit | null {
  const n = from.length;
  if (n < 2 || onto.length !== n) return null;
  const a = middle(from);
  const b = middle(onto);
  let [dot, cross, size] = [0, 0, 0];
  from.forEach((point, k) => {
    const px = point.x - a.x;
    const py = point.y - a.y;
    const qx = onto[k]!.x - b.x;
    const qy = onto[k]!.y - b.y;
    dot += px * qx + py * qy;
    cross += px * qy - py * qx;
    size += px * px + py * py;
  });
  if (!(size > 0)) return null;
  const angle = Math.atan2(cross, dot);
  const scale = keepSize ? 1 : Math.hypot(dot, cross) / size;
  const cos = scale * Math.cos(angle);
  const sin = scale * Math.sin(angle);
  const map = {
    a: cos,
    b: sin,
    c: -sin,
    d: cos,
    e: b.x - cos * a.x + sin * a.y,
    f: b.y - sin * a.x - cos * a.y,
  };
  return { map, scale, angle, squares: squaresAfter(map, from, onto) };
}

function middle(points: readonly Point[]): Point {
  let [x, y] = [0, 0];
  for (const point of points) {
    x += point.x / points.length;
    y += point.y / points.length;
  }
  return { x, y };
}

function squaresAfter(map: Affine, from: readonly Point[], onto: readonly Point[]): number {
  let squares = 0;
  from.forEach((point, k) => {
    const { x, y } = applyAffine(map, point);
    squares += (x - onto[k]!.x) ** 2 + (y - onto[k]!.y) ** 2;
  });
  return squares;
}
