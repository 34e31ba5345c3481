import { biweight, median } from '#base/fit/robust.ts';
import { solveDense } from '#base/fit/solve.ts';
import type { Point } from '#base/geometry/point.ts';
import { aspectOf, directionOf, type Moments } from './shape.ts';

interface Shaped extends Point {
  readonly shape: Moments;
}

/** A hole stretched by more than this (as a logarithm) beside the others is oval in itself and does not count. */
const REACH = 0.1;

/**
 * What a round hole looks like at each place of the card. Card has thickness, so that a camera that looks at it aslant sees
 * every hole narrower that way, a little more where it looks more aslant: a stretch that changes evenly over the card.
 * Where the needle leant in one part of the card, its holes stand out against that and do not count.
 */
export function usualShape(holes: readonly Shaped[]): (place: Point) => Moments {
  const stretches = holes.map(({ shape }) => {
    const size = Math.log(aspectOf(shape));
    const angle = 2 * directionOf(shape);
    return { x: size * Math.cos(angle), y: size * Math.sin(angle) };
  });
  const middle = { x: median(holes.map(({ x }) => x)), y: median(holes.map(({ y }) => y)) };
  const spread = 1 + median(holes.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y)));
  const rows = holes.map(({ x, y }) => [1, (x - middle.x) / spread, (y - middle.y) / spread] as const);
  let [p, q]: [Plane, Plane] = [
    [median(stretches.map(({ x }) => x)), 0, 0],
    [median(stretches.map(({ y }) => y)), 0, 0],
  ];
  if (holes.length < FEWEST) return () => momentsOf(p[0] || 0, q[0] || 0);
  for (let round = 0; round < 6; round++) {
    const weights = stretches.map(({ x, y }, k) =>
      biweight(Math.hypot(x - valueAt(p, rows[k]!), y - valueAt(q, rows[k]!)), REACH),
    );
    p =
      plane(
        rows,
        stretches.map(({ x }) => x),
        weights,
      ) ?? p;
    q =
      plane(
        rows,
        stretches.map(({ y }) => y),
        weights,
      ) ?? q;
  }
  return ({ x, y }) => {
    const row = [1, (x - middle.x) / spread, (y - middle.y) / spread] as const;
    return momentsOf(valueAt(p, row), valueAt(q, row));
  };
}

/** Fewer holes than these cannot show how the stretch changes over the card. */
const FEWEST = 30;

type Plane = readonly [number, number, number];

const valueAt = (plane: Plane, row: Plane): number =>
  plane[0] * row[0] + plane[1] * row[1] + plane[2] * row[2];

/** Weighted least squares; a slope that few holes support stays near none. */
function plane(rows: readonly Plane[], values: readonly number[], weights: readonly number[]): Plane | null {
  const matrix = new Float64Array(9);
  const right = new Float64Array(3);
  rows.forEach((row, k) => {
    for (let i = 0; i < 3; i++) {
      right[i]! += weights[k]! * row[i]! * values[k]!;
      for (let j = 0; j < 3; j++) matrix[3 * i + j]! += weights[k]! * row[i]! * row[j]!;
    }
  });
  matrix[4]! += 5;
  matrix[8]! += 5;
  const found = solveDense(matrix, right);
  return found && [found[0]!, found[1]!, found[2]!];
}

/** The moments, of determinant 1, of a stretch given as a vector of double the angle. */
function momentsOf(x: number, y: number): Moments {
  const size = Math.hypot(x, y);
  const [along, across] = [Math.exp(size), Math.exp(-size)];
  const [cos, sin] = size === 0 ? [1, 0] : [x / size, y / size];
  // moments grow with the square of lengths, so that a stretch of the aspect e^size has moments e^size and e^-size
  const [mean, half] = [(along + across) / 2, (along - across) / 2];
  return { xx: mean + half * cos, xy: half * sin, yy: mean - half * cos };
}
