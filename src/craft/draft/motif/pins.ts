import { type Cubic, cubicLength, cubicPoint } from '#base/geometry/curve.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Shape, ShapePart } from './shape.ts';

/**
 * Pins along an outline, from its first point on: at even distances by arc length in each part, and one at every
 * sharp corner. `counts` says how many each part has, its first corner counted and its last one not.
 */
export const pinsAlong = (shape: Shape, counts: readonly number[]): readonly (readonly Point[])[] =>
  shape.parts.map((part, k) => evenly(part, counts[k]!));

/**
 * Shares pins out among the parts of an outline by their lengths (largest remainder), each with one at least. With no
 * number wanted, each part has as many as come nearest to the given distance.
 */
export function shareOut({ parts, length }: Shape, wanted: number | undefined, apart: number): number[] {
  if (wanted === undefined) return parts.map((part) => Math.max(1, Math.round(part.length / apart)));
  const ideal = parts.map((part) => (wanted * part.length) / length);
  const counts = ideal.map((share) => Math.max(1, Math.floor(share + ROUNDING)));
  let left = wanted - counts.reduce((total, count) => total + count, 0);
  const byRemainder = ideal
    .map((share, part) => ({ part, remainder: share - Math.floor(share + ROUNDING) }))
    .sort((one, other) => other.remainder - one.remainder || one.part - other.part);
  for (const { part } of byRemainder) if (left-- > 0) counts[part]!++;
  return counts;
}

/** Two parts that mirror each other differ by rounding, and get the same. */
const ROUNDING = 1e-9;

function evenly({ cubics, lengths, length }: ShapePart, count: number): Point[] {
  const points: Point[] = [];
  let [k, before] = [0, 0];
  for (let pin = 0; pin < count; pin++) {
    const along = (length * pin) / count;
    while (k < cubics.length - 1 && before + lengths[k]! < along) before += lengths[k++]!;
    points.push(cubicPoint(cubics[k]!, parameterAt(cubics[k]!, lengths[k]!, along - before)));
  }
  return points;
}

/** The parameter at which a cubic is so long, by the secant rule kept between two bounds. */
function parameterAt(cubic: Cubic, whole: number, wanted: number): number {
  let [low, high] = [0, 1];
  let [below, above] = [-wanted, whole - wanted];
  if (below >= 0) return 0;
  if (above <= 0) return 1;
  for (let round = 0; round < 60 && high - low > 1e-12; round++) {
    // Now and then a bisection, lest one bound stand still.
    const t = round % 3 === 2 ? (low + high) / 2 : low + ((high - low) * below) / (below - above);
    const off = cubicLength(cubic, 0, t) - wanted;
    if (Math.abs(off) < 1e-10 * whole) return t;
    if (off < 0) [low, below] = [t, off];
    else [high, above] = [t, off];
  }
  return (low + high) / 2;
}
