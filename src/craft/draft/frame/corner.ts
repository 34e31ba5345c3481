import { distance, type Point } from '#base/geometry/point.ts';
import { type Arc, scallopArc } from '../strip/arc.ts';
import { type Layout, leastStep } from '../strip/layout.ts';
import type { FrameFigures } from './figures.ts';
import { type Mitre, mitredPlace } from './mitre.ts';

/**
 * What a headside does at a corner, in places of the side that starts there:
 * straight: two edges meet at a right angle. Points: one large point fills the corner. Fans: the two fans that meet on
 * the mitre become one, half round. Scallops: one more stands across the mitre.
 */
export interface Corner {
  /** The row at which the first repeat of the side begins: even, and 0 or less. */
  readonly first: number;
  /** Rows before this one have an edge of their own, `edge`. */
  readonly beside: number;
  readonly edge: (row: number) => number;
  /** The outermost pin on the mitre is (top, -top). */
  readonly top: number;
  /** The curve across the mitre, from one side's row `ends` to the other's, mirrored. */
  readonly arc: CornerArc | null;
}

export interface CornerArc {
  /** The column and row at which it ends on the side that starts here. */
  readonly column: number;
  readonly row: number;
  readonly centre: Point;
  readonly radius: number;
  /** Half the angle that it spans, radians; it is its own image in the mitre. */
  readonly half: number;
  /** Pins, both ends among them. */
  readonly pins: number;
}

export function cornerOf({ headside, width }: FrameFigures, strip: Layout, mitre: Mitre): Corner {
  const { unit } = strip;
  const half = unit / 2;
  switch (headside.kind) {
    case 'straight':
      return { first: -evenUp(width), beside: -width, edge: () => width, top: width, arc: null };
    case 'points': {
      const top = width + (headside.depth ?? half);
      const first = -evenUp(width);
      return { first, beside: first + half, edge: () => top, top, arc: null };
    }
    case 'fans': {
      const tip = width + half;
      const end = { column: tip, row: unit - tip };
      const { x, y } = mitredPlace(mitre, end.column, end.row);
      const chord = x + y;
      const arc = {
        ...end,
        centre: { x: x - chord / 2, y: y - chord / 2 },
        radius: chord / Math.SQRT2,
        half: Math.PI / 2,
        pins: 2 * headside.pins - 1,
      };
      return { first: -tip, beside: -width, edge: () => width, top: width, arc };
    }
    case 'scallops':
      return scallopCorner(
        scallopArc(strip.lattice, width, unit, headside.depthShare),
        headside.pins,
        width,
        strip,
        mitre,
      );
  }
}

/** A scallop across the mitre, about as wide as the others but fuller, so that it fills the corner. */
function scallopCorner(beside: Arc, pins: number, width: number, strip: Layout, mitre: Mitre): Corner {
  const { lattice, reach } = mitre;
  const perRow = (lattice.column + reach * lattice.row) / (1 + reach);
  const rise = Math.max(2, 2 * Math.round((strip.unit * lattice.row) / (2 * Math.SQRT2 * perRow)));
  const end = { column: width, row: rise - width };
  const { x, y } = mitredPlace(mitre, end.column, end.row);
  const chord = Math.SQRT2 * (x + y);
  // An eighth of the turn that the corner makes comes on each half; more would hide the scallops beside it.
  const half = Math.min(beside.half + Math.PI / 8, FULLEST);
  const radius = chord / (2 * Math.sin(half));
  const inward = (radius * Math.cos(half)) / Math.SQRT2;
  const centre = { x: (x - y) / 2 - inward, y: (y - x) / 2 + inward };
  const step = (beside.half * beside.radius) / (pins - 1);
  const arc = { ...end, centre, radius, half, pins: Math.max(3, Math.round((half * radius) / step) + 1) };

  const clear = 0.75 * leastStep(lattice);
  const holds = (i: number, j: number): boolean =>
    i - j <= width - end.row || radius - distance(mitredPlace(mitre, i, j), centre) >= clear;
  const edge = (row: number): number => {
    let i = row < 0 ? -row : row % 2;
    while (holds(i + 2, row)) i += 2;
    return i;
  };
  let top = (width - end.row) >> 1;
  // one pin alone before the row behind it would look forgotten
  while (holds(top + 1, -top - 1) && holds(top + 2, -top)) top++;
  return { first: end.row, beside: end.row, edge, top, arc };
}

const FULLEST = (85 * Math.PI) / 180;

const evenUp = (whole: number): number => whole + (whole % 2);
