import type { Point } from '#base/geometry/point.ts';
import type { GroundName } from '#pattern/recipe/ground.ts';
import type { Drafting } from '../drafting.ts';
import { fillGround, groundNamed } from '../grounds/index.ts';
import { latticePlace } from '../lattice.ts';
import type { FittedMotif } from './fit.ts';
import type { Frame } from './frame.ts';
import type { Outline } from './outline.ts';

/**
 * A ground within an outline of one repeat, on the lattice of the ground outside. Its cells begin at the place nearest
 * to the middle of the motif, so that a motif that is the same left and right has its filling so too. Gives the number
 * of pins set.
 */
export function fillMotif(
  drafting: Drafting,
  ground: GroundName,
  { shape, clearing }: FittedMotif,
  { lattice, clearance, rowsEach }: Frame,
  { name, repeat, outline }: { readonly name: string; readonly repeat: number; readonly outline: Outline },
): number {
  const { left, right, top, bottom } = shape.box;
  const middle = nearestPlace((left + right) / 2 / lattice.column, (top + bottom) / 2 / lattice.row);
  const down = repeat * rowsEach;
  const sideAt = (i: number, j: number) =>
    clearing.sideOf(latticePlace(lattice, middle.i + i, middle.j + j), clearance);
  return fillGround(drafting, groundNamed(ground), {
    columns: [Math.floor(left / lattice.column) - middle.i, Math.ceil(right / lattice.column) - middle.i],
    rows: [Math.floor(top / lattice.row) - middle.j, Math.ceil(bottom / lattice.row) - middle.j],
    place: (i, j): Point => latticePlace(lattice, middle.i + i, middle.j + j + down),
    inside: (_, i, j) => sideAt(i, j) === 'inside',
    name: (i, j) => `${name}.f${middle.i + i}.${middle.j + j + down}`,
    cut: (standing, lacking, i, j) => {
      if (sideAt(i, j) !== 'inside') outline.join(standing, lacking);
    },
  }).length;
}

/** The place of the plain ground nearest to so many columns and rows. */
function nearestPlace(columns: number, rows: number): { i: number; j: number } {
  const i = Math.round(columns);
  const j = Math.round(rows);
  return { i, j: (i + j) % 2 === 0 ? j : rows < j ? j - 1 : j + 1 };
}
