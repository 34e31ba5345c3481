import { distance, type Point } from '#base/geometry/point.ts';
import type { GroundLattice } from '../lattice.ts';

/** An arc of a circle down the strip, bulging to the right, no more than half round. */
export interface Arc {
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radius: number;
  /** Half the angle that it spans at its centre, radians. */
  readonly half: number;
}

/** The arc over a chord straight down from `from`, that stands out `depth` beyond it; depth is at most half the chord. */
export function arcOver(from: Point, chord: number, depth: number): Arc {
  const radius = (depth * depth + (chord * chord) / 4) / (2 * depth);
  return {
    from,
    to: { x: from.x, y: from.y + chord },
    centre: { x: from.x + depth - radius, y: from.y + chord / 2 },
    radius,
    half: Math.atan2(chord / 2, radius - depth),
  };
}

/** A fan's arc over the points of the ground beside it: by its depth as a share of the chord, or round the pin in its corner. */
export function fanArc({ column, row }: GroundLattice, width: number, unit: number, share?: number): Arc {
  const across = (unit / 2) * column;
  const radius = Math.hypot(across, (unit / 2) * row);
  const from = { x: width * column + across, y: 0 };
  return arcOver(from, unit * row, share === undefined ? radius - across : share * unit * row);
}

/** A scallop's arc from valley to valley. */
export const scallopArc = ({ column, row }: GroundLattice, width: number, unit: number, share = 1 / 5): Arc =>
  arcOver({ x: width * column, y: 0 }, unit * row, share * unit * row);

/** Pins at even distances along an arc, both ends among them. */
export const alongArc = ({ centre, radius, half, from, to }: Arc, pins: number): Point[] =>
  Array.from({ length: pins }, (_, k) => {
    if (k === 0) return from;
    if (k === pins - 1) return to;
    const turn = half * ((2 * k) / (pins - 1) - 1);
    return { x: centre.x + radius * Math.cos(turn), y: centre.y + radius * Math.sin(turn) };
  });

/** The most pins that an arc takes, both ends among them, with `least` from each to the next. */
export const mostOnArc = ({ radius, half }: Arc, least: number): number =>
  Math.floor(half / Math.asin(Math.min(1, least / (2 * radius))) + 1e-9) + 1;

/** The fewest pins with which none stands farther than `most` from the next. */
export const leastOnArc = ({ radius, half }: Arc, most: number): number =>
  Math.ceil(half / Math.asin(Math.min(1, most / (2 * radius))) - 1e-9) + 1;

/** The least distance between any of some places and any of others. */
export const leastBetween = (some: readonly Point[], others: readonly Point[]): number =>
  some.reduce(
    (least, one) => others.reduce((now, other) => Math.min(now, distance(one, other)), least),
    Number.POSITIVE_INFINITY,
  );
