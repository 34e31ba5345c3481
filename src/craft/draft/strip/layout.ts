import type { Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { StripRecipe } from '#pattern/recipe/strip.ts';
import { type GroundLattice, groundLattice, latticePlace } from '../lattice.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';
import { type Arc, scallopArc } from './arc.ts';
import { countTrouble, nearestOf } from './figure.ts';

export type WholeRecipe = StripRecipe & Required<Pick<StripRecipe, 'footside' | 'headside' | 'areas'>>;

/** Where everything of a strip lies on its lattice: what pins, lines and areas are then read from. */
export interface Layout {
  /** With every edge and area said. */
  readonly recipe: WholeRecipe;
  readonly lattice: GroundLattice;
  /** Rows in a repeat, and in the whole strip; a pin may stand in each row from 0 to `rows`. */
  readonly period: number;
  readonly rows: number;
  /** Rows from one point, fan or scallop to the next; the whole repeat where the headside is straight. */
  readonly unit: number;
  /** The last column that holds ground in each row of a unit. */
  readonly edge: readonly number[];
  /** The farthest that ground reaches, in columns. */
  readonly widest: number;
  /** Pins of a curved headside keep this from each other and from the ground, mm. */
  readonly clearance: number;
}

/** Throws never; a figure that the lattice cannot meet comes back as trouble. */
export function layoutOf(given: StripRecipe): Result<Layout, DraftTrouble> {
  const recipe: WholeRecipe = {
    footside: { kind: 'plain' },
    headside: { kind: 'straight' },
    areas: [],
    ...given,
  };
  const lattice = groundLattice(recipe.spacing, recipe.angle);
  const step = leastStep(lattice);
  if (step < LEAST_SPACING) {
    const least = Math.ceil((recipe.spacing * LEAST_SPACING * 1000) / step) / 1000;
    return failed({
      kind: 'recipe-figure',
      figure: 'spacing',
      given: recipe.spacing,
      unit: 'mm',
      least,
      nearest: least,
      why: 'pins-too-close',
    });
  }
  const { headside, length } = recipe;
  const each = ('perRepeat' in headside && headside.perRepeat) || 1;
  if (length % each !== 0) {
    const divisors = Array.from({ length }, (_, k) => k + 1).filter((count) => length % count === 0);
    const nearest = nearestOf(each, divisors)!;
    return failed(
      countTrouble('headside.perRepeat', each, 'repeat-does-not-divide', { least: 1, most: length, nearest }),
    );
  }
  const unit = (2 * length) / each;
  const clearance = Math.max(LEAST_SPACING, step / 2);
  const edge = edgeOf(recipe, lattice, unit);
  if (!edge.ok) return edge;
  return done({
    recipe,
    lattice,
    period: 2 * length,
    rows: 2 * length * recipe.repeats,
    unit,
    edge: edge.value,
    widest: Math.max(...edge.value),
    clearance,
  });
}

/** The distance between nearest neighbours of a lattice, mm. */
export const leastStep = ({ column, row }: GroundLattice): number =>
  Math.min(Math.hypot(column, row), 2 * column, 2 * row);

/** The last column with ground in a row of the strip. */
export const edgeAt = ({ edge, unit }: Layout, row: number): number => edge[row % unit]!;

/** Where the pin of a place stands: on the lattice, but for footside pins that passives part from it. */
export function placeAt({ recipe, lattice }: Layout, i: number, j: number): Point {
  const { footside, headside, width } = recipe;
  const gap = footside.kind === 'passives' ? footside.share : 0;
  const aside = i === 0 ? -gap : headside.kind === 'footside' && i === width ? gap : 0;
  return latticePlace(lattice, i + aside, j);
}

function edgeOf(recipe: WholeRecipe, lattice: GroundLattice, unit: number): Result<number[], DraftTrouble> {
  const { headside, width } = recipe;
  const half = unit / 2;
  const rows = Array.from({ length: unit }, (_, row) => row);
  if (headside.kind === 'points' && headside.depth !== undefined && headside.depth > half) {
    // A point rises by a column in each row.
    const limits = { least: 1, most: half, nearest: half };
    return failed(countTrouble('headside.depth', headside.depth, 'does-not-fit', limits));
  }
  const least = leastWidth(recipe);
  if (width < least) return failed(countTrouble('width', width, 'too-narrow', { least, nearest: least }));
  // A pin of the edge must stand in the row where a point, fan or scallop begins.
  const begins = {
    straight: 0,
    footside: 0,
    points: headside.kind === 'points' ? (headside.depth ?? half) + half : 0,
    fans: half,
    scallops: 0,
  };
  const isCurved = headside.kind !== 'straight' && headside.kind !== 'footside';
  if (isCurved && (width + begins[headside.kind]) % 2 !== 0)
    return failed(countTrouble('width', width, 'off-the-lattice', { nearest: width + 1 }));
  switch (headside.kind) {
    case 'straight':
    case 'footside':
      return done(rows.map(() => width));
    case 'points': {
      const depth = headside.depth ?? half;
      return done(rows.map((row) => width + Math.max(0, depth - Math.abs(row - half))));
    }
    case 'fans':
      return done(rows.map((row) => width + Math.abs(row - half)));
    case 'scallops': {
      const arc = scallopArc(lattice, width, unit, headside.depthShare);
      const clear = leastStep(lattice);
      return done(rows.map((row) => (row === 0 ? width : lastUnder(arc, lattice, row, clear))));
    }
  }
}

/** Enough columns that the ground is seen for what it is between footside pins that are set aside. */
function leastWidth({ footside, headside }: WholeRecipe): number {
  if (footside.kind === 'plain') return 2;
  return headside.kind === 'footside' ? 5 : 4;
}

/** The last place of a row that keeps clear of an arc. */
function lastUnder(arc: Arc, lattice: GroundLattice, row: number, clear: number): number {
  const { centre, radius, from } = arc;
  let i = Math.floor((centre.x + radius) / lattice.column);
  if ((i + row) % 2 !== 0) i--;
  while (i > 0) {
    const { x, y } = latticePlace(lattice, i, row);
    const inside = radius - Math.hypot(x - centre.x, y - centre.y);
    // Left of the ends the arc's nearest point is an end.
    if (x < from.x || inside >= clear) break;
    i -= 2;
  }
  return i;
}
