import type { Affine } from '../geometry/affine.ts';
import type { Point } from '../geometry/point.ts';

/**
 * The affine map that carries `from` on to `to` with the least sum of squared errors (normal equations about the means);
 * null where the points are fewer than three or lie on one line, to within a thousandth of their spread.
 */
export function affineFit(from: readonly Point[], to: readonly Point[]): Affine | null {
  const count = from.length;
  if (count !== to.length) throw new RangeError(`affineFit: ${count} points on to ${to.length}`);
  if (count < 3) return null;
  const [p, q] = [meanOf(from), meanOf(to)];
  let [xx, xy, yy, xu, yu, xv, yv] = [0, 0, 0, 0, 0, 0, 0];
  for (let k = 0; k < count; k++) {
    const [x, y] = [from[k]!.x - p.x, from[k]!.y - p.y];
    const [u, v] = [to[k]!.x - q.x, to[k]!.y - q.y];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xu += x * u;
    yu += y * u;
    xv += x * v;
    yv += y * v;
  }
  const det = xx * yy - xy * xy;
  if (!(det > 1e-6 * (xx + yy) ** 2)) return null;
  const a = (xu * yy - yu * xy) / det;
  const c = (yu * xx - xu * xy) / det;
  const b = (xv * yy - yv * xy) / det;
  const d = (yv * xx - xv * xy) / det;
  return { a, b, c, d, e: q.x - a * p.x - c * p.y, f: q.y - b * p.x - d * p.y };
}

function meanOf(points: readonly Point[]): Point {
  let [x, y] = [0, 0];
  for (const point of points) {
    x += point.x / points.length;
    y += point.y / points.length;
  }
  return { x, y };
}
