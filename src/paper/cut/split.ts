import { type Affine, translation } from '#base/geometry/affine.ts';
import { between, type Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import { polyline } from '../drawing/path.ts';
import { tileGrid, tileName } from '../tile/grid.ts';
import { placeSeam } from '../tile/seam.ts';
import type { Typeface } from '../type/typeface.ts';
import { type CutDrawing, type CutLayer, type CutLine, cutLayers, linesIn } from './drawing.ts';
import { flatten } from './flatten.ts';
import { cutLines } from './lines.ts';
import { framed, placeDrawing } from './move.ts';
import type { CutTrouble, Extent } from './options.ts';
import { TARGET_ROOM, targetMarks } from './targets.ts';

/** One part of a drawing that is larger than the bed. */
export interface CutPart {
  /** 'A1' for the top left one. */
  readonly name: string;
  readonly drawing: CutDrawing;
  /** From the whole drawing's mm to this part's. */
  readonly toPart: Affine;
}

/**
 * A drawing in parts that the bed holds. Neighbouring parts share targets on the seam between them: engrave or mark them
 * with the one part, shift the card, and lay the next part on the very same marks. Every hole is in exactly one part.
 */
export function splitDrawing(
  drawing: CutDrawing,
  bed: Extent,
  typeface: Typeface,
): Result<readonly CutPart[], CutTrouble> {
  if (bed.width < LEAST_BED || bed.height < LEAST_BED) {
    return failed({ kind: 'cut-bed-too-small', least: LEAST_BED });
  }
  const whole = { left: 0, top: 0, right: drawing.width, bottom: drawing.height };
  // An overlap wide enough for a whole target on either side of the seam.
  const grid = tileGrid(whole, bed, OVERLAP);
  const parts = grid.columns.starts.length * grid.rows.starts.length;
  if (parts > MOST_PARTS) return failed({ kind: 'cut-too-many-parts', parts, most: MOST_PARTS });
  const centres = linesIn(drawing, 'HOLES').flatMap((line) => (line.kind === 'circle' ? [line.at] : []));
  const seams = {
    x: seamsOf(
      grid.columns.starts,
      grid.columns.size,
      centres.map(({ x }) => x),
    ),
    y: seamsOf(
      grid.rows.starts,
      grid.rows.size,
      centres.map(({ y }) => y),
    ),
  };
  const columns = windows(grid.columns.starts, grid.columns.size, drawing.width);
  const rows = windows(grid.rows.starts, grid.rows.size, drawing.height);
  const layers = cutLayers.map((layer) => [layer, inCells(linesIn(drawing, layer), seams)] as const);
  const targets = sharedTargets(drawing, seams);
  return done(
    rows.flatMap(([top, bottom], row) =>
      columns.map(([left, right], column): CutPart => {
        const size = { width: right - left, height: bottom - top };
        const shown = targets.filter(
          ({ x, y }) => x - REACH >= left && x + REACH <= right && y - REACH >= top && y + REACH <= bottom,
        );
        const own: Partial<Record<CutLayer, readonly CutLine[]>> = Object.fromEntries(
          layers.map(([layer, cells]) => [layer, cells.get(`${row} ${column}`) ?? []]),
        );
        const toPart = translation(-left, -top);
        const marks = shown.flatMap(targetMarks).flatMap((mark) => cutLines(mark, typeface));
        return {
          name: tileName(row, column),
          drawing: framed(placeDrawing({ ...size, layers: { ...own, REF: marks } }, toPart, size)),
          toPart,
        };
      }),
    ),
  );
}

const OVERLAP = 20;
const LEAST_BED = 60;
const MOST_PARTS = 100;
/** Half a target. */
const REACH = 3;

interface Seams {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

const seamsOf = (starts: readonly number[], size: number, positions: readonly number[]): number[] =>
  starts.slice(1).map((start, k) => placeSeam(start, starts[k]! + size, positions).at);

/** Where windows begin and end; the outer ones reach no further than the drawing. */
const windows = (starts: readonly number[], size: number, whole: number): [number, number][] =>
  starts.map((start) => [Math.max(0, start), Math.min(whole, start + size)]);

/** Where every seam meets the others and both borders. */
function sharedTargets({ width, height }: CutDrawing, { x, y }: Seams): Point[] {
  const inset = TARGET_ROOM / 2;
  const down = [inset, ...y, height - inset];
  const across = [inset, ...x, width - inset];
  return [
    ...x.flatMap((at) => down.map((along) => ({ x: at, y: along }))),
    ...y.flatMap((at) => across.filter((along) => !x.includes(along)).map((along) => ({ x: along, y: at }))),
  ];
}

const cellOf = ({ x, y }: Point, seams: Seams): string =>
  `${seams.y.filter((at) => at < y).length} ${seams.x.filter((at) => at < x).length}`;

/** Circles whole, by their centre; paths cut where they meet a seam. */
function inCells(lines: readonly CutLine[], seams: Seams): Map<string, CutLine[]> {
  const cells = new Map<string, CutLine[]>();
  const put = (cell: string, line: CutLine): void => {
    const list = cells.get(cell);
    if (list) list.push(line);
    else cells.set(cell, [line]);
  };
  for (const line of lines) {
    if (line.kind === 'circle') put(cellOf(line.at, seams), line);
    else {
      for (const { points, closed } of flatten(line.path)) {
        const stops = cutAtSeams(closed ? [...points, points[0]!] : points, seams);
        for (const [cell, piece] of pieces(stops, seams)) put(cell, { kind: 'path', path: polyline(piece) });
      }
    }
  }
  return cells;
}

/** The points with one more wherever a segment crosses a seam. */
function cutAtSeams(points: readonly Point[], { x, y }: Seams): Point[] {
  return points.flatMap((to, k) => {
    if (k === 0) return [to];
    const from = points[k - 1]!;
    const crossings = [
      ...x.map((at) => (at - from.x) / (to.x - from.x)),
      ...y.map((at) => (at - from.y) / (to.y - from.y)),
    ].filter((t) => t > 0 && t < 1);
    return [...crossings.sort((one, other) => one - other).map((t) => between(from, to, t)), to];
  });
}

function pieces(points: readonly Point[], seams: Seams): [string, Point[]][] {
  const found: [string, Point[]][] = [];
  for (let k = 1; k < points.length; k++) {
    const [from, to] = [points[k - 1]!, points[k]!];
    const cell = cellOf(between(from, to, 0.5), seams);
    const last = found.at(-1);
    if (last?.[0] === cell) last[1].push(to);
    else found.push([cell, [from, to]]);
  }
  return found;
}
