import { done, failed, type Result } from '#base/result.ts';
import type { StripArea } from '#pattern/recipe/strip-area.ts';
import type { DraftTrouble } from '../trouble.ts';
import { countTrouble, nearestOf } from './figure.ts';
import { areaTrouble } from './fit.ts';
import type { Layout } from './layout.ts';
import { type Place, shapeOf } from './shape.ts';
import { type Trail, trailEdge, trailUnit, trailWidth } from './trail.ts';

/**
 * What the areas make of the places of one repeat, round which rows wrap. Kept at half columns and rows, so that the
 * middle of a working line can be asked for as well as a pin's place.
 */
export class Cells {
  readonly #held = new Set<number>();
  readonly #outline = new Set<number>();
  readonly #centres = new Set<number>();
  readonly #period: number;

  constructor(period: number) {
    this.#period = period;
  }

  /** Whether a place lies within an area, where no ground is. */
  isHeld(i: number, j: number): boolean {
    return this.#held.has(this.#key(i, j));
  }

  isOutline(i: number, j: number): boolean {
    return this.#outline.has(this.#key(i, j));
  }

  isCentre(i: number, j: number): boolean {
    return this.#centres.has(this.#key(i, j));
  }

  /** Whether an area meets neither another nor, over the end of the repeat, itself. */
  isFree({ held, outline }: Extent): boolean {
    const own = new Set(held.map((place) => this.#key(...place)));
    return (
      own.size === held.length &&
      [...own].every((key) => !this.#held.has(key) && !this.#outline.has(key)) &&
      outline.map((place) => this.#key(...place)).every((key) => !this.#held.has(key) && !own.has(key))
    );
  }

  take({ held, outline, centre }: Extent): void {
    for (const place of held) this.#held.add(this.#key(...place));
    for (const place of outline) this.#outline.add(this.#key(...place));
    if (centre) this.#centres.add(this.#key(...centre));
  }

  #key(i: number, j: number): number {
    const rows = 2 * this.#period;
    return 2 * i * rows + ((((2 * j) % rows) + rows) % rows);
  }
}

interface Extent {
  readonly held: readonly Place[];
  readonly outline: readonly Place[];
  readonly centre?: Place;
}

/** The areas of a strip laid on its lattice, or the figure of the first that does not fit or is in another's way. */
export function cellsOf(layout: Layout): Result<Cells, DraftTrouble> {
  const cells = new Cells(layout.period);
  for (const [k, area] of layout.recipe.areas.entries()) {
    const trouble = areaTrouble(layout, area, `areas.${k}`);
    if (trouble) return failed(trouble);
    const extent = extentOf(area, layout.period);
    if (cells.isFree(extent)) cells.take(extent);
    else return failed(inTheWay(layout, cells, area, `areas.${k}.row`));
  }
  return done(cells);
}

/** Of the rows at which an area would be in nobody's way, itself least of all, the nearest. */
function inTheWay(layout: Layout, cells: Cells, area: StripArea, figure: string): DraftTrouble {
  const rows = Array.from({ length: layout.period }, (_, row) => row).filter((row) => {
    const moved = { ...area, row };
    return areaTrouble(layout, moved, '') === null && cells.isFree(extentOf(moved, layout.period));
  });
  const nearest = nearestOf(area.row, rows);
  return countTrouble(figure, area.row, 'in-the-way', nearest === undefined ? {} : { nearest });
}

/** Half columns and rows between two bounds, without them. */
const halvesBetween = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, 2 * (to - from) - 1) }, (_, k) => from + (k + 1) / 2);

function extentOf(area: StripArea, period: number): Extent {
  if (area.shape === 'trail') return trailExtent(area, period);
  const { columns, rows, holds, outline } = shapeOf(area);
  const held = halvesBetween(...rows).flatMap((j) =>
    halvesBetween(...columns).flatMap((i): Place[] => (holds(i, j) ? [[i, j]] : [])),
  );
  return area.shape === 'spider' ? { held, outline, centre: [area.column, area.row] } : { held, outline };
}

function trailExtent(trail: Trail, period: number): Extent {
  const unit = trailUnit(trail, period);
  const across = trailWidth(trail);
  const rows = Array.from({ length: 2 * period }, (_, k) => k / 2);
  return {
    held: rows.flatMap((j) => {
      const left = trailEdge(trail, unit, j);
      return halvesBetween(left, left + across).map((i): Place => [i, j]);
    }),
    outline: rows
      .filter((j) => Number.isInteger(j))
      .flatMap((j): Place[] => {
        const left = trailEdge(trail, unit, j);
        return [
          [left, j],
          [left + across, j],
        ];
      }),
  };
}
