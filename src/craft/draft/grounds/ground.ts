import type { GroundName } from '#pattern/recipe/ground.ts';

/**
 * A ground as pins in one cell of the lattice, repeated over it. Every pin stands at a place of the plain ground
 * (`../lattice.ts`: column + row is even), so that any ground meets a footside, and one ground the next, on the
 * same lattice. Where the pins stand and how the pairs go is common practice, no source.
 */
export interface Ground {
  readonly name: GroundName;
  /** The cell's size, in columns and rows, both even; the cell repeats at every whole multiple. */
  readonly columns: number;
  readonly rows: number;
  readonly pins: readonly GroundPin[];
  /** Working lines of one cell. A line never goes up: the pair it stands for is worked from `from` to `to`. */
  readonly lines: readonly GroundLine[];
  /** Whether every place of the plain lattice is filled, so that it meets a footside without a seam. */
  readonly plain: boolean;
}

export interface GroundPin {
  readonly i: number;
  readonly j: number;
}

/** From one pin of the cell to another (by index), the second `across` cells to the right and `down` cells down. */
export interface GroundLine {
  readonly from: number;
  readonly to: number;
  readonly across: number;
  readonly down: number;
}

/** A working line as a person writes it down: from a pin of the cell, so many columns across and rows down. */
export type Step = readonly [i: number, j: number, across: number, down: number];

/** A ground from its pins and steps. Throws where a step leaves from or leads to no pin. */
export function groundOf(
  name: GroundName,
  [columns, rows]: readonly [columns: number, rows: number],
  places: readonly (readonly [i: number, j: number])[],
  steps: readonly Step[],
): Ground {
  const pins = places.map(([i, j]) => ({ i, j }));
  const at = (i: number, j: number) => {
    const index = pins.findIndex((pin) => pin.i === modulo(i, columns) && pin.j === modulo(j, rows));
    if (index < 0) throw new RangeError(`groundOf: ${name} has no pin at ${i}, ${j}`);
    return index;
  };
  return {
    name,
    columns,
    rows,
    pins,
    lines: steps.map(([i, j, across, down]) => ({
      from: at(i, j),
      to: at(i + across, j + down),
      across: Math.floor((i + across) / columns) - Math.floor(i / columns),
      down: Math.floor((j + down) / rows) - Math.floor(j / rows),
    })),
    plain: 2 * pins.length === columns * rows,
  };
}

const modulo = (value: number, period: number) => value - period * Math.floor(value / period);
