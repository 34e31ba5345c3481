import type { Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import { type GroundLattice, groundLattice } from '../lattice.ts';
import type { DraftTrouble } from '../trouble.ts';

/**
 * How a lattice goes round a corner. Beside the corner the ground is pressed so that the place (i, -i) falls on the
 * mitre, where it meets its image in the other side: pairs run on from side to side, none hung in, none taken out. All
 * of it is affine, so that working lines stay straight. At 45 degrees nothing is pressed: the lattice is its own image.
 */
export interface Mitre {
  readonly lattice: GroundLattice;
  /** The pressed ground reaches, in column i, this many times i rows down the side from the corner's footside pin. */
  readonly reach: number;
}

/**
 * The mitre at an angle in degrees. No step between neighbouring pins of the ground or of a straight headside differs
 * by more than `tolerance` (a share) from the same step on the side.
 *
 * On the mitre two columns lie `column` apart both ways, where a step of the ground is row / cos(angle): the ratio is
 * sqrt(2) sin(angle). Two rows at the outer edge go from column + reach row over 1 + reach steps instead of one row each.
 */
export function mitreOf(spacing: number, degrees: number, tolerance: number): Result<Mitre, DraftTrouble> {
  const ratio = Math.SQRT2 * Math.sin((degrees * Math.PI) / 180);
  if (Math.abs(ratio - 1) > tolerance + ROUNDING) {
    const [least, most] = [angleAt(1 - tolerance), angleAt(1 + tolerance)];
    const limits = { least: Math.ceil(least * 100) / 100, most: Math.floor(most * 100) / 100 };
    const nearest = degrees < 45 ? limits.least : limits.most;
    const figure = { figure: 'angle', given: degrees, unit: 'degrees' } as const;
    return failed({ kind: 'recipe-figure', ...figure, ...limits, nearest, why: 'does-not-fit' });
  }
  const lattice = groundLattice(spacing, degrees);
  const stretch = Math.abs(lattice.column / lattice.row - 1);
  const reach = stretch <= tolerance + ROUNDING ? 1 : Math.ceil((stretch - tolerance) / tolerance);
  return done({ lattice, reach });
}

/** Where a place of a side lies that starts at a corner: x outward from the footside, y along it from the corner. */
export function mitredPlace({ lattice: { column, row }, reach }: Mitre, i: number, j: number): Point {
  const pressed = j < reach * i;
  const y = pressed ? ((j + i) * (column + reach * row)) / (1 + reach) - i * column : j * row;
  return { x: i * column, y };
}

/** Whether the ground is pressed at all: not at 45 degrees. */
export const isPressed = ({ lattice: { column, row } }: Mitre): boolean =>
  Math.abs(column / row - 1) > ROUNDING;

const angleAt = (ratio: number): number => (Math.asin(Math.min(1, ratio / Math.SQRT2)) * 180) / Math.PI;

const ROUNDING = 1e-9;
