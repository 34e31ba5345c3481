import { done, failed, type Result } from '#base/result.ts';
import { countTrouble } from '../strip/figure.ts';
import { isOnLattice, type Place, type Shape, shapeOf } from '../strip/shape.ts';
import type { DraftTrouble } from '../trouble.ts';
import { edgeAt, type FrameLayout, ownPlace, rowsOf, type Side } from './layout.ts';

type FrameArea = FrameLayout['recipe']['areas'][number];

/** One area of a frame: a shape on a side, or across the mitre at which that side starts. */
export interface Laid {
  readonly id: string;
  readonly side: Side;
  readonly area: FrameArea;
  readonly shape: Shape;
  /** Columns and rows from the shape to its place on the side. */
  readonly down: number;
}

export const laidPlace = ({ down }: Pick<Laid, 'down'>, [i, j]: Place): Place => [i, j + down];

/** The areas of a frame, and what they make of its places. */
export interface Cells {
  readonly laid: readonly Laid[];
  /** Whether a place, whole or half, lies within an area, where no ground is. */
  readonly isHeld: (side: Side, place: Place) => boolean;
  /** Whether a spider's centre pin stands there. */
  readonly isCentre: (side: Side, place: Place) => boolean;
}

/** Areas that a mitre, a cut end or what stands in the corner would cut are left out: there is ground instead. */
export function cellsOf(layout: FrameLayout): Result<Cells, DraftTrouble> {
  const keys = keysOf(layout);
  const held = new Set<number>();
  const centres = new Set<number>();
  const laid: Laid[] = [];
  const take = (one: Laid): void => {
    laid.push(one);
    for (const place of heldBy(one.shape)) held.add(keys(one.side, laidPlace(one, place)));
    const { area, side } = one;
    if (area.shape === 'spider') centres.add(keys(side, laidPlace(one, [area.column, area.row])));
  };

  const corners = cornerAreas(layout);
  if (!corners.ok) return corners;
  corners.value.forEach(take);
  const inCorners = new Set(held);
  const outlines = new Set(
    corners.value.flatMap((one) => one.shape.outline.map((place) => keys(one.side, laidPlace(one, place)))),
  );
  for (const one of sideAreas(layout)) {
    const meets =
      one.shape.outline.some((place) => inCorners.has(keys(one.side, laidPlace(one, place)))) ||
      (outlines.size > 0 &&
        heldBy(one.shape).some((place) => outlines.has(keys(one.side, laidPlace(one, place)))));
    if (!meets) take(one);
  }
  return done({
    laid,
    isHeld: (side, place) => held.has(keys(side, place)),
    isCentre: (side, place) => centres.has(keys(side, place)),
  });
}

/** A number for each place, whole or half, the same from whichever side it is named. */
function keysOf(layout: FrameLayout): (side: Side, place: Place) => number {
  const most = Math.max(...layout.sides.map(({ rows }) => rows)) + 2 * layout.corner.top + 4;
  const columns = 2 * (Math.max(layout.strip.widest, layout.corner.top) + 4);
  const at = new Map(layout.sides.map((side, index) => [side, index]));
  return (from, place) => {
    const { side, i, j } = ownPlace(layout, from, place);
    return (at.get(side)! * 4 * most + 2 * (j + most)) * columns + 2 * i;
  };
}

/** Places within a shape, by halves, so that the middles of working lines are among them. */
function heldBy({ columns, rows, holds }: Shape): Place[] {
  const places: Place[] = [];
  for (let j = rows[0] + 0.5; j < rows[1]; j += 0.5) {
    for (let i = columns[0] + 0.5; i < columns[1]; i += 0.5) if (holds(i, j)) places.push([i, j]);
  }
  return places;
}

function sideAreas(layout: FrameLayout): Laid[] {
  const { recipe, strip, sides } = layout;
  return recipe.areas.flatMap((area, k) => {
    const shape = shapeOf(area);
    return sides.flatMap((side) =>
      Array.from({ length: side.repeats + 2 }, (_, n) => n - 1).flatMap((repeat): Laid[] => {
        const down = repeat * strip.period + side.phase;
        // repeats are counted from the corner, so that areas keep their names when there are more of them
        const nth = side.before === null ? repeat - side.repeats : repeat;
        const one = { id: `${side.name}a${k}.${nth}`, side, area, shape, down };
        return isWhole(layout, one) ? [one] : [];
      }),
    );
  });
}

/** Whether nothing of an area lies beyond a mitre, a cut end or the ground; a gimp wants half a hole more. */
function isWhole(layout: FrameLayout, laid: Laid): boolean {
  const { side, shape, area } = laid;
  const gimp = 'gimp' in area && area.gimp ? 1 : 0;
  const aside = gimp + (layout.recipe.headside.kind === 'straight' ? 1 : 0);
  return shape.outline.every((place) => {
    const [i, j] = laidPlace(laid, place);
    const [before, after] = [side.before === null ? j - gimp : i + j - 2 * gimp, side.rows - j];
    if (before < 0 || (side.after === null ? after - gimp : after + i - 2 * gimp) < 0) return false;
    return i <= edgeAt(layout, side, j) - aside;
  });
}

function cornerAreas(layout: FrameLayout): Result<Laid[], DraftTrouble> {
  const { corner } = layout.recipe;
  if (!corner) return done([]);
  const fits = (column: number, size: number): boolean => {
    const area = { ...corner, column, size, row: -column };
    if (!isOnLattice(area)) return false;
    return layout.sides.every((side) => side.before === null || isInCorner(layout, side, area));
  };
  if (!fits(corner.column, corner.size)) return failed(cornerTrouble(layout, corner, fits));
  const area = { ...corner, row: -corner.column };
  return done(
    layout.sides.flatMap((side) =>
      side.before === null ? [] : [{ id: `${side.name}c`, side, area, shape: shapeOf(area), down: 0 }],
    ),
  );
}

function isInCorner(layout: FrameLayout, side: Side, area: FrameArea): boolean {
  const gimp = 'gimp' in area && area.gimp ? 1 : 0;
  const aside = gimp + (layout.recipe.headside.kind === 'straight' ? 1 : 0);
  return shapeOf(area).outline.every((place) => {
    const own = ownPlace(layout, side, place);
    const [first, last] = rowsOf(layout, own.side);
    return (
      own.i >= 1 + gimp &&
      own.j >= first + gimp &&
      own.j <= last - gimp &&
      own.i <= edgeAt(layout, own.side, own.j) - aside
    );
  });
}

/** The nearest size at which it stands where it should; else the nearest column at its size. */
function cornerTrouble(
  { strip, corner: { top } }: FrameLayout,
  { column, size, shape }: NonNullable<FrameLayout['recipe']['corner']>,
  fits: (column: number, size: number) => boolean,
): DraftTrouble {
  const least = shape === 'spider' ? 2 : 1;
  for (let less = size - 1; less >= least; less--) {
    if (fits(column, less))
      return countTrouble('corner.size', size, 'does-not-fit', { least, most: less, nearest: less });
  }
  const most = Math.max(top, strip.widest);
  for (let away = 1; away <= most + column; away++) {
    for (const other of [column - away, column + away]) {
      for (let less = size; less >= least; less--) {
        if (other >= 2 && fits(other, less))
          return countTrouble('corner.column', column, 'does-not-fit', { nearest: other });
      }
    }
  }
  return countTrouble('corner.size', size, 'too-narrow', {});
}
