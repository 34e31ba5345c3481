import type { Point } from '#base/geometry/point.ts';

/**
 * The map that bends a strip round a centre and keeps angles: `place` is exp of a linear map of the plane of complex
 * numbers (L. V. Ahlfors, Complex Analysis, 3rd ed. 1979, ch. 3: exp is conformal). The strip's footside is x = 0 and
 * becomes the circle of `radius`; y runs round.
 */
export interface Bend {
  /** Radius of the footside, mm. */
  readonly radius: number;
  /** Radians turned for each mm along the footside of the strip, and the logarithm of growth for each mm across. */
  readonly rate: number;
  /** Where a place of the strip comes to lie; the centre of the ring is the origin. */
  place(flat: Point): Point;
  /** By how much the map enlarges near a place of the strip: the same in every direction. */
  growth(flat: Point): number;
}

export interface BendFigures {
  /** Straight distance between neighbouring footside pins, mm, in the strip as well as in the ring. */
  readonly spacing: number;
  /** Footside spacings along the strip; y goes from 0 to `spacings * spacing`. */
  readonly spacings: number;
  /** How far the strip goes round, radians, at most a full turn. */
  readonly arc: number;
  readonly foot: 'inside' | 'outside';
}

/** The middle of the strip comes to lie straight below the centre, so that a collar hangs as it is worn. */
export function bendOf({ spacing, spacings, arc, foot }: BendFigures): Bend {
  const length = spacing * spacings;
  const rate = arc / length;
  const radius = radiusOfChord(spacing, arc / spacings);
  // Both signs turn together, or the lace would be mirrored.
  const sign = foot === 'inside' ? 1 : -1;
  const size = (x: number): number => radius * Math.exp(sign * rate * x);
  return {
    radius,
    rate,
    place: ({ x, y }) => {
      const angle = Math.PI / 2 + sign * rate * (y - length / 2);
      return { x: size(x) * Math.cos(angle), y: size(x) * Math.sin(angle) };
    },
    growth: ({ x }) => rate * size(x),
  };
}

/** Radius of the circle on which a chord of the given length spans `angle` radians: chord = 2 r sin(angle / 2). */
export const radiusOfChord = (chord: number, angle: number): number => chord / (2 * Math.sin(angle / 2));
