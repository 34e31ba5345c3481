import type { Box } from '#base/geometry/box.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { MotifRecipe } from '#pattern/recipe/motif.ts';
import { groundNamed } from '../grounds/index.ts';
import { type GroundLattice, groundLattice } from '../lattice.ts';
import { type DraftTrouble, LEAST_SPACING, MOST_PINS } from '../trouble.ts';

/** The strip of ground that the motifs stand in. */
export interface Frame {
  readonly lattice: GroundLattice;
  /** Nearest distance between two pins of the plain ground, mm. */
  readonly apart: number;
  readonly columns: number;
  /** Rows of one repeat, an even number, and of all. */
  readonly rowsEach: number;
  readonly rows: number;
  /** Length of one repeat, mm. */
  readonly step: number;
  readonly clearance: number;
  /** Where the outlines of the first repeat may lie, so that the edges keep all their pins. */
  readonly room: Box;
}

export function frameOf(recipe: MotifRecipe): Result<Frame, DraftTrouble> {
  const lattice = groundLattice(recipe.spacing, recipe.angle);
  const apart = nearest(lattice);
  if (apart < LEAST_SPACING - ROUNDING) {
    const least = (LEAST_SPACING / apart) * recipe.spacing;
    return failed(figure('spacing', recipe.spacing, 'mm', 'pins-too-close', { least, nearest: least }));
  }
  const columns = Math.max(1, Math.round(recipe.width / lattice.column));
  const rowsEach = 2 * recipe.length;
  const rows = rowsEach * recipe.repeats;
  if (((columns + 1) * (rows + 1)) / 2 > MOST_PINS) {
    const most = Math.floor((2 * MOST_PINS) / (columns + 1) / rowsEach) - 1;
    const limits = most >= 1 ? { most, nearest: most } : {};
    return failed(figure('repeats', recipe.repeats, 'count', 'too-many-pins', limits));
  }
  const cell = groundNamed(recipe.ground).rows / 2;
  if (recipe.repeats > 1 && recipe.length % cell !== 0) {
    const nearest = cell * Math.max(1, Math.round(recipe.length / cell));
    return failed(figure('length', recipe.length, 'count', 'repeat-does-not-divide', { nearest }));
  }
  const clearance = recipe.clearance ?? Math.max(LEAST_SPACING, CLEARANCE * apart);
  if (clearance < LEAST_SPACING) {
    const limits = { least: LEAST_SPACING, nearest: LEAST_SPACING };
    return failed(figure('clearance', clearance, 'mm', 'pins-too-close', limits));
  }
  const step = recipe.length * recipe.spacing;
  const room: Box = {
    left: clearance,
    top: clearance,
    right: columns * lattice.column - clearance,
    bottom: step - clearance,
  };
  return done({ lattice, apart, columns, rowsEach, rows, step, clearance, room });
}

/** The clearance where the recipe names none, in parts of the distance between pins. */
const CLEARANCE = 0.5;

/** So that a limit that is met to the last bit counts as met. */
const ROUNDING = 1e-9;

const nearest = ({ column, row }: GroundLattice): number =>
  Math.min(Math.hypot(column, row), 2 * column, 2 * row);

export const figure = (
  name: string,
  given: number,
  unit: DraftTrouble['unit'],
  why: DraftTrouble['why'],
  limits: Pick<DraftTrouble, 'least' | 'most' | 'nearest'> = {},
): DraftTrouble => ({ kind: 'recipe-figure', figure: name, given, unit, why, ...limits });
