import type { StripArea } from '#pattern/recipe/strip-area.ts';
import type { DraftTrouble } from '../trouble.ts';
import { countTrouble, nearestOf } from './figure.ts';
import { edgeAt, type Layout } from './layout.ts';
import { isOnLattice, type Place, shapeOf } from './shape.ts';
import { trailEdge, trailUnit, trailWidth } from './trail.ts';

/** Why an area does not fit the ground of a strip, by the figure that stands in the way; null where it fits. */
export function areaTrouble(layout: Layout, area: StripArea, path: string): DraftTrouble | null {
  if (area.shape === 'trail' && area.perRepeat && layout.recipe.length % area.perRepeat !== 0) {
    const { length } = layout.recipe;
    const counts = Array.from({ length }, (_, k) => k + 1).filter((count) => length % count === 0);
    const nearest = nearestOf(area.perRepeat, counts)!;
    const limits = { least: 1, most: length, nearest };
    return countTrouble(`${path}.perRepeat`, area.perRepeat, 'repeat-does-not-divide', limits);
  }
  if (area.shape === 'chevron' && area.size >= area.arm) {
    const most = area.arm - 1;
    return countTrouble(`${path}.size`, area.size, 'does-not-fit', { least: 1, most, nearest: most });
  }
  if (!isOnLattice(area))
    return countTrouble(`${path}.row`, area.row, 'off-the-lattice', { nearest: area.row + 1 });
  if (isInside(layout, area)) return null;

  const columns = Array.from({ length: layout.widest + 1 }, (_, column) => column).filter(
    (column) => isOnLattice({ ...area, column }) && isInside(layout, { ...area, column }),
  );
  if (columns.length > 0)
    return countTrouble(`${path}.column`, area.column, 'does-not-fit', {
      least: columns[0]!,
      most: columns.at(-1)!,
      nearest: nearestOf(area.column, columns)!,
    });
  // Nowhere across the strip at this size: the largest that fits somewhere in this row.
  const most = largest(layout, area);
  return countTrouble(`${path}.size`, area.size, 'too-narrow', most === null ? {} : { most, nearest: most });
}

function largest(layout: Layout, area: StripArea): number | null {
  for (let size = area.size - 1; size >= leastSize(area); size--) {
    for (let column = 0; column <= layout.widest; column++) {
      const smaller = { ...area, size, column };
      if (isOnLattice(smaller) && isInside(layout, smaller)) return size;
    }
  }
  return null;
}

const leastSize = ({ shape }: StripArea): number => (shape === 'spider' ? 2 : 1);

/** Whether the footside keeps its own pins, the headside where it is straight too, and a gimp has room. */
function isInside(layout: Layout, area: StripArea): boolean {
  const gimp = 'gimp' in area && area.gimp ? 1 : 0;
  const { kind } = layout.recipe.headside;
  const aside = (kind === 'straight' || kind === 'footside' ? 1 : 0) + gimp;
  return outlineOf(layout, area).every(([i, j]) => {
    const { period } = layout;
    return i >= 1 + gimp && i <= edgeAt(layout, ((j % period) + period) % period) - aside;
  });
}

function outlineOf({ period }: Layout, area: StripArea): readonly Place[] {
  if (area.shape !== 'trail') return shapeOf(area).outline;
  const unit = trailUnit(area, period);
  return Array.from({ length: unit }, (_, row) => row).flatMap((row): Place[] => {
    const left = trailEdge(area, unit, row);
    return [
      [left, row],
      [left + trailWidth(area), row],
    ];
  });
}
