import type { StripArea } from '#pattern/recipe/strip-area.ts';
import type { Place } from './shape.ts';

/** A zigzag band down the whole strip, always as wide: its two edges lie along lines of the ground. */
export type Trail = Extract<StripArea, { shape: 'trail' }>;

/** Rows from one turn on its left to the next. */
export const trailUnit = ({ perRepeat }: Trail, period: number): number => period / (perRepeat ?? 1);

/** How far it is across, in columns. */
export const trailWidth = ({ size }: Trail): number => 2 * size;

/** The column of its left edge in a row, which may lie between two. */
export function trailEdge(trail: Trail, unit: number, row: number): number {
  const along = (((row - trail.row) % unit) + unit) % unit;
  return trail.column + Math.min(along, unit - along);
}

/** Its left edge from one row to another, both on the lattice: the ends and the turns between. */
export function trailCourse(trail: Trail, unit: number, from: number, to: number): Place[] {
  const half = unit / 2;
  const first = Math.floor((from - trail.row) / half) + 1;
  const course: Place[] = [[trailEdge(trail, unit, from), from]];
  for (let turn = trail.row + first * half; turn < to; turn += half)
    course.push([trailEdge(trail, unit, turn), turn]);
  course.push([trailEdge(trail, unit, to), to]);
  return course;
}
