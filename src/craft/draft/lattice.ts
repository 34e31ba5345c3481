import type { Point } from '#base/geometry/point.ts';

/**
 * The lattice of a ground beside a footside. Places are counted in columns across and rows along, both whole in the
 * plain ground, where a pin stands wherever column + row is even: place (i, j) lies at x = i `column`, y = j `row`.
 */
export interface GroundLattice {
  /** Width of a column, mm. */
  readonly column: number;
  /** Height of a row: half the footside spacing, mm. */
  readonly row: number;
}

/** The lattice whose lines stand at `degrees` to a footside of `spacing` mm: tan(angle) = column / row. */
export const groundLattice = (spacing: number, degrees: number): GroundLattice => ({
  row: spacing / 2,
  column: (spacing / 2) * Math.tan((degrees * Math.PI) / 180),
});

export const latticePlace = ({ column, row }: GroundLattice, i: number, j: number): Point => ({
  x: i * column,
  y: j * row,
});
