import type { MotifRecipe } from '#pattern/recipe/motif.ts';
import type { Drafting } from '../drafting.ts';
import { fillGround, type GroundField, groundNamed } from '../grounds/index.ts';
import { latticePlace } from '../lattice.ts';
import type { FittedMotif } from './fit.ts';
import type { Frame } from './frame.ts';
import type { Outline } from './outline.ts';

const nameOf = (i: number, j: number) => `g${i}.${j}`;

/**
 * The ground round the motifs of all repeats. A footside keeps all its pins, and two columns of plain ground beside it
 * lead over to a ground that leaves places empty; a strip with no room for more is plain.
 */
export function drawGround(
  drafting: Drafting,
  recipe: MotifRecipe,
  frame: Frame,
  motifs: readonly FittedMotif[],
  outlineOf: (motif: number, repeat: number) => Outline,
): void {
  const { columns, rows, lattice, rowsEach, clearance } = frame;
  const { ground, footside } = recipe;
  const motifsAt = byRow(frame, motifs);
  const motifNear = (i: number, j: number): number | undefined => {
    const row = j % rowsEach;
    const place = latticePlace(lattice, i, row);
    return motifsAt[row]!.find((k) => motifs[k]!.clearing.sideOf(place, clearance) !== 'outside');
  };
  const field: Omit<GroundField, 'columns'> = {
    rows: [0, rows],
    place: (i, j) => latticePlace(lattice, i, j),
    inside: (_, i, j) => motifNear(i, j) === undefined,
    name: nameOf,
    cut: (standing, lacking, i, j) => {
      const motif = motifNear(i, j);
      if (motif !== undefined)
        outlineOf(motif, Math.min(recipe.repeats - 1, Math.floor(j / rowsEach))).join(standing, lacking);
    },
  };
  const plain = groundNamed('plain');
  const wanted = footside !== 'none' && columns <= 2 * BORDER ? plain : groundNamed(ground);
  const left = wanted.plain || footside === 'none' ? 0 : BORDER;
  const right = columns - (wanted.plain || footside !== 'both' ? 0 : BORDER);
  fillGround(drafting, plain, { ...field, columns: [0, left - 1] });
  fillGround(drafting, plain, { ...field, columns: [right + 1, columns] });
  fillGround(drafting, wanted, { ...field, columns: [left, right] });
  // The pairs that go from the one ground to the other.
  fillGround(drafting, plain, { ...field, columns: [left - 1, left], inside: () => false });
  fillGround(drafting, plain, { ...field, columns: [right, right + 1], inside: () => false });
}

/** Columns of plain ground beside a footside. */
const BORDER = 2;

/** For each row of a repeat, the motifs that reach it with their clearance. */
function byRow({ rowsEach, lattice, clearance }: Frame, motifs: readonly FittedMotif[]): number[][] {
  const rows = Array.from({ length: rowsEach }, (): number[] => []);
  for (const [k, { shape }] of motifs.entries()) {
    const first = Math.max(0, Math.floor((shape.box.top - clearance) / lattice.row));
    const last = Math.min(rowsEach - 1, Math.ceil((shape.box.bottom + clearance) / lattice.row));
    for (let row = first; row <= last; row++) rows[row]!.push(k);
  }
  return rows;
}

/** Runs along the edges that are sewn to cloth. */
export function drawFootsides(drafting: Drafting, { footside }: MotifRecipe, { columns, rows }: Frame): void {
  const edge = (id: string, column: number) => {
    const pins = [];
    for (let j = column % 2; j <= rows; j += 2) pins.push(nameOf(column, j));
    drafting.run({ id, pins, shape: 'line', closed: false, role: 'footside', even: true });
  };
  if (footside === 'none') return;
  edge('footside', 0);
  if (footside === 'both') edge('footside-right', columns);
}
