import { type Affine, translation } from '#base/geometry/affine.ts';
import { type Box, heightOf, widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { type PaperSize, turned } from '#base/units/paper.ts';
import { type Axis, type TileGrid, tileGrid, tileName, tilesNeeded } from './grid.ts';
import { placeSeam, SEAM_CLEARANCE } from './seam.ts';

/** The pages that carry a pattern, all of one paper laid one way. */
export interface Layout {
  readonly paper: PaperSize;
  readonly overlap: number;
  readonly tiles: readonly Tile[];
  readonly columns: number;
  readonly rows: number;
  /** Cuts between columns (their x) and rows (their y), in the pattern's own mm. */
  readonly cuts: { readonly across: readonly number[]; readonly down: readonly number[] };
  /** Index of holes nearer to a cut than they should be. */
  readonly nearCuts: readonly number[];
}

/** One page of a layout. */
export interface Tile {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** What it shows of the pattern. */
  readonly window: Box;
  /** The same window on the paper. */
  readonly area: Box;
  readonly toPaper: Affine;
}

/** Room left round a tile's window for ticks, cross names and edge labels, mm. */
export const GUTTER = 5;

/**
 * Lays a pattern's content out on as few sheets as will do: upright or landscape is chosen once for all of them,
 * upright where both need the same number.
 */
export function layOut(
  content: Box,
  holes: readonly Point[],
  paper: PaperSize,
  overlap: number,
  roomOn: (paper: PaperSize) => Box,
): Layout {
  const upright = { paper, room: roomOn(paper) };
  const landscape = { paper: turned(paper), room: roomOn(turned(paper)) };
  const sheets = ({ room }: typeof upright): number => sheetsNeeded(content, room, overlap);
  const { paper: chosen, room } = sheets(landscape) < sheets(upright) ? landscape : upright;
  const single = sheets({ paper: chosen, room }) === 1;
  const window = single ? room : innerRoom(room);
  const grid = tileGrid(content, { width: widthOf(window), height: heightOf(window) }, overlap);
  const across = cutsOf(
    grid.columns,
    holes.map(({ x }) => x),
  );
  const down = cutsOf(
    grid.rows,
    holes.map(({ y }) => y),
  );
  const near = (cuts: readonly number[], at: number): boolean =>
    cuts.some((cut) => Math.abs(cut - at) < SEAM_CLEARANCE - 1e-9);
  return {
    paper: chosen,
    overlap,
    tiles: tilesOf(grid, window),
    columns: grid.columns.starts.length,
    rows: grid.rows.starts.length,
    cuts: { across, down },
    nearCuts: holes.flatMap(({ x, y }, index) => (near(across, x) || near(down, y) ? [index] : [])),
  };
}

/** How many sheets the content takes in a room; more than one need a gutter each. */
function sheetsNeeded(content: Box, room: Box, overlap: number): number {
  const [width, height] = [widthOf(content), heightOf(content)];
  const whole = tilesNeeded(width, widthOf(room), overlap) * tilesNeeded(height, heightOf(room), overlap);
  if (whole === 1) return 1;
  const inner = innerRoom(room);
  return tilesNeeded(width, widthOf(inner), overlap) * tilesNeeded(height, heightOf(inner), overlap);
}

const innerRoom = (room: Box): Box => ({
  left: room.left + GUTTER,
  top: room.top + GUTTER,
  right: room.right - GUTTER,
  bottom: room.bottom - GUTTER,
});

const cutsOf = ({ starts, size }: Axis, positions: readonly number[]): number[] =>
  starts.slice(1).map((start, k) => placeSeam(start, starts[k]! + size, positions).at);

function tilesOf({ columns, rows }: TileGrid, area: Box): Tile[] {
  return rows.starts.flatMap((top, row) =>
    columns.starts.map((left, column) => ({
      name: tileName(row, column),
      row,
      column,
      window: { left, top, right: left + columns.size, bottom: top + rows.size },
      area,
      toPaper: translation(area.left - left, area.top - top),
    })),
  );
}
