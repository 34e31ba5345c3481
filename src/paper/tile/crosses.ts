import { boxHolds, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Layout, Tile } from './layout.ts';

/** A registration cross: printed at the very same place of the pattern on every sheet that shows it. */
export interface RegistrationCross {
  readonly at: Point;
  /** Letter of an outermost cross, from which long distances are measured; absent for the others. */
  readonly name?: 'P' | 'Q' | 'R' | 'S';
}

/** Length of a cross's arms from end to end, mm. */
export const CROSS_SIZE = 6;

/**
 * Crosses where every cut meets every other and the outer ends of the sheets: each seam has one at both of its ends.
 * The four outermost are P, Q, R and S, clockwise from the top left.
 */
export function registrationCrosses({ tiles, cuts, columns, rows }: Layout): RegistrationCross[] {
  if (tiles.length < 2) return [];
  const [first, last] = [tiles[0]!.window, tiles.at(-1)!.window];
  const xs = [first.left + INSET, ...cuts.across, last.right - INSET];
  const ys = [first.top + INSET, ...cuts.down, last.bottom - INSET];
  return ys.flatMap((y, row) =>
    xs.map((x, column) => {
      const corner = CORNERS[`${edge(row, rows)}${edge(column, columns)}`];
      return { at: { x, y }, ...(corner ? { name: corner } : {}) };
    }),
  );
}

/** The crosses that a tile has room to print whole. */
export const crossesOn = (tile: Tile, crosses: readonly RegistrationCross[]): RegistrationCross[] =>
  crosses.filter(({ at }) => boxHolds(growBox(tile.window, -CROSS_SIZE / 4), at));

const INSET = 4;

const edge = (k: number, last: number): string => (k === 0 ? 'first' : k === last ? 'last' : '');

const CORNERS: Readonly<Record<string, RegistrationCross['name']>> = {
  firstfirst: 'P',
  firstlast: 'Q',
  lastlast: 'R',
  lastfirst: 'S',
};
