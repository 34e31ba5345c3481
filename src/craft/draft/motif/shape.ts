import { type Box, boxOf } from '#base/geometry/box.ts';
import { closedSpline, type Knot } from '#base/geometry/closed-spline.ts';
import { type Cubic, cubicLength, cubicPoint } from '#base/geometry/curve.ts';
import { cross, type Point, subtract } from '#base/geometry/point.ts';
import type { MotifShape } from '#pattern/recipe/motif.ts';

/** The outline of a motif as a curve on the lace, mm. */
export interface Shape {
  /** The points that the outline passes through, as they lie on the lace. */
  readonly knots: readonly Point[];
  /** From one sharp corner to the next; one closed part where there is no sharp corner. */
  readonly parts: readonly ShapePart[];
  readonly smooth: boolean;
  /** The curve as a closed chain of short steps; it keeps within a thousandth of a millimetre of it on any usual bend. */
  readonly chain: readonly Point[];
  readonly box: Box;
  readonly length: number;
}

export interface ShapePart {
  readonly cubics: readonly Cubic[];
  readonly lengths: readonly number[];
  readonly length: number;
  /** Whether it runs straight from one corner to the next. */
  readonly straight: boolean;
}

/** Steps of the chain, mm: fine enough for any clearance. */
const STEP = 0.1;

/** The points of a motif's outline as they lie on the lace. */
export function placedKnots({ outline, at, turn, mirrored }: MotifShape): Knot[] {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return outline.map(({ x, y, sharp }): Knot => {
    const across = mirrored ? -x : x;
    return {
      x: at.x + across * cos - y * sin,
      y: at.y + across * sin + y * cos,
      ...(sharp && { sharp }),
    };
  });
}

export function shapeOf(motif: MotifShape): Shape {
  const placed = placedKnots(motif);
  const parts = closedSpline(placed).map((cubics): ShapePart => {
    const lengths = cubics.map((cubic) => cubicLength(cubic));
    const [only] = cubics;
    return { cubics, lengths, length: sum(lengths), straight: cubics.length === 1 && isStraight(only!) };
  });
  const chain = parts.flatMap(({ cubics, lengths }) =>
    cubics.flatMap((cubic, k) => {
      const steps = Math.max(1, Math.ceil(lengths[k]! / STEP));
      return Array.from({ length: steps }, (_, step) => cubicPoint(cubic, step / steps));
    }),
  );
  return {
    knots: placed,
    parts,
    smooth: !placed.some(({ sharp }) => sharp),
    chain,
    box: boxOf(chain),
    length: sum(parts.map(({ length }) => length)),
  };
}

const isStraight = ([from, leaving, coming, to]: Cubic): boolean =>
  [leaving, coming].every((point) => Math.abs(cross(subtract(to, from), subtract(point, from))) < 1e-9);

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
