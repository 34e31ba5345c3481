import { distance, type Point } from '../geometry/point.ts';
import { solveDense } from './solve.ts';

/**
 * A plane seen in perspective: nine numbers row by row, `(x, y)` goes to
 * `((h0 x + h1 y + h2) / w, (h3 x + h4 y + h5) / w)` with `w = h6 x + h7 y + h8`. A common factor changes nothing.
 */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** Where a point goes; not finite on the line that the map carries to infinity. */
export function applyHomography(h: Homography, { x, y }: Point): Point {
  const w = h[6] * x + h[7] * y + h[8];
  return { x: (h[0] * x + h[1] * y + h[2]) / w, y: (h[3] * x + h[4] * y + h[5]) / w };
}

/** The map that does `inner` first and then `outer`, scaled so that its last number is 1 where it can be. */
export function composeHomographies(outer: Homography, inner: Homography): Homography {
  const at = (row: number, column: number): number =>
    outer[3 * row]! * inner[column]! +
    outer[3 * row + 1]! * inner[3 + column]! +
    outer[3 * row + 2]! * inner[6 + column]!;
  return scaled([at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)]);
}

/** The map that undoes `h` (its adjugate). Throws where `h` flattens the plane. */
export function invertHomography(h: Homography): Homography {
  const [a, b, c, d, e, f, g, k, l] = h;
  const inverse: Homography = [
    e * l - f * k,
    c * k - b * l,
    b * f - c * e,
    f * g - d * l,
    a * l - c * g,
    c * d - a * f,
    d * k - e * g,
    b * g - a * k,
    a * e - b * d,
  ];
  const det = a * inverse[0] + b * inverse[3] + c * inverse[6];
  if (det === 0 || !Number.isFinite(det)) throw new RangeError(`invertHomography: determinant is ${det}`);
  return scaled(inverse);
}

/**
 * The homography that carries `from` on to `onto` with the least sum of squared algebraic errors, about means and in units of
 * the spread (R. I. Hartley, IEEE Trans. PAMI 19 (1997)). Exact for four pairs, no three of them on a line; null where
 * the pairs are fewer or leave the map undetermined.
 */
export function fitHomography(from: readonly Point[], onto: readonly Point[]): Homography | null {
  const count = from.length;
  if (count !== onto.length) throw new RangeError(`fitHomography: ${count} points on to ${onto.length}`);
  if (count < 4) return null;
  const [source, target] = [frameOf(from), frameOf(onto)];
  const matrix = new Float64Array(64);
  const right = new Float64Array(8);
  const line = new Float64Array(8);
  const take = (value: number): void => {
    for (let i = 0; i < 8; i++) {
      if (line[i] === 0) continue;
      right[i]! += line[i]! * value;
      for (let j = 0; j < 8; j++) matrix[8 * i + j]! += line[i]! * line[j]!;
    }
  };
  for (let k = 0; k < count; k++) {
    const x = (from[k]!.x - source.x) / source.size;
    const y = (from[k]!.y - source.y) / source.size;
    const u = (onto[k]!.x - target.x) / target.size;
    const v = (onto[k]!.y - target.y) / target.size;
    line.set([x, y, 1, 0, 0, 0, -u * x, -u * y]);
    take(u);
    line.set([0, 0, 0, x, y, 1, -v * x, -v * y]);
    take(v);
  }
  const h = solveDense(matrix, right);
  // between frames of the same spread no number is large, unless the pairs do not determine the map
  if (h === null || h.some((value) => !(Math.abs(value) < 1e6))) return null;
  const core: Homography = [h[0]!, h[1]!, h[2]!, h[3]!, h[4]!, h[5]!, h[6]!, h[7]!, 1];
  const whole = composeHomographies(outOf(target), composeHomographies(core, into(source)));
  // four pairs with three on one line cannot be met, whatever the equations say
  const isMet =
    count > 4 ||
    from.every((point, k) => distance(applyHomography(whole, point), onto[k]!) < 1e-6 * target.size);
  return isMet ? whole : null;
}

/** A frame about the mean of points in which their spread is 1. */
export interface Frame extends Point {
  readonly size: number;
}

export function frameOf(points: readonly Point[]): Frame {
  let [x, y, square] = [0, 0, 0];
  for (const point of points) {
    x += point.x / points.length;
    y += point.y / points.length;
  }
  for (const point of points) square += (point.x - x) ** 2 + (point.y - y) ** 2;
  return { x, y, size: Math.sqrt(square / points.length) || 1 };
}

export const into = ({ x, y, size }: Frame): Homography => [
  1 / size,
  0,
  -x / size,
  0,
  1 / size,
  -y / size,
  0,
  0,
  1,
];

export const outOf = ({ x, y, size }: Frame): Homography => [size, 0, x, 0, size, y, 0, 0, 1];

function scaled(h: Homography): Homography {
  const last = h[8] || 1;
  return h.map((value) => value / last) as unknown as Homography;
}
