/**
 * A ground as pins in one cell of the lattice, repeated over it. Places are in columns and rows of the lattice
 * (`../lattice.ts`) and may lie between them. Pins are named within the cell, so that ids can be made of them.
 */
export interface Ground {
  /** The cell's size, in columns and rows; the cell repeats at every whole multiple. */
  readonly columns: number;
  readonly rows: number;
  readonly pins: readonly GroundPin[];
  /** Working lines of one cell: from one pin to another, the second `across` cells to the right and `down` cells down. */
  readonly lines: readonly GroundLine[];
  /** Whether neighbouring places of a plain lattice are all filled, so that it meets a footside without a seam. */
  readonly plain: boolean;
}

export interface GroundPin {
  readonly i: number;
  readonly j: number;
}

export interface GroundLine {
  readonly from: number;
  readonly to: number;
  readonly across: number;
  readonly down: number;
}
