import Delaunator from 'delaunator';
import { affineFit } from '../fit/affine.ts';
import { type Affine, applyAffine, invert } from '../geometry/affine.ts';
import { type Box, growBox } from '../geometry/box.ts';
import { distance, type PixelPoint, type Point } from '../geometry/point.ts';
import { PointIndex } from '../geometry/point-index.ts';
import { unfold } from './warp-unfold.ts';

/** Where a mark stood in the picture, and where on the sheet (mm) it now belongs. */
export interface WarpControl {
  readonly from: PixelPoint;
  readonly to: Point;
}

/** A net of triangles over a sheet; each corner knows which place of the picture belongs there. */
export interface WarpMesh {
  /** Corners on the sheet, mm: first the controls, in their order, then corners of its own. */
  readonly places: readonly Point[];
  /** The same corners in the picture. */
  readonly sources: readonly PixelPoint[];
  /** Three corner indices a triangle. */
  readonly triangles: Uint32Array;
}

/** Corners of the net's own stand about this many usual control distances apart. */
const PITCH = 2;
/** Where the nearest control is this many usual distances away, the net follows none of them any more. */
const REACH = 10;
/** No net has more corners of its own along a side. */
const MOST_ALONG = 160;

/**
 * The net that carries a picture on to a sheet so that every control lands where it belongs. Between the controls it is
 * their Delaunay triangulation. Where there are none (outside them and in wide gaps) corners of its own are added: they
 * move as the controls near them do on average, and less the further away those are, down to the straight map that fits
 * all controls best. So triangles stay well shaped, and nothing folds over while neighbours move by less than half the
 * distance between them against each other.
 *
 * `toSheet` maps the picture to the sheet as it was before anything moved; it decides where controls are too few.
 */
export function warpMesh(controls: readonly WarpControl[], toSheet: Affine, box: Box): WarpMesh {
  const places = controls.map((control) => control.to);
  const toPicture = straightMap(controls, toSheet);
  const strays = controls.map(({ from, to }): PixelPoint => {
    const straight = applyAffine(toPicture, to);
    return { column: from.column - straight.x, row: from.row - straight.y };
  });
  const index = new PointIndex(places);
  const size = Math.max(box.right - box.left, box.bottom - box.top);
  const step = usualDistance(places, index, size);
  const pitch = Math.max(PITCH * step, size / MOST_ALONG);

  const corners = gridOver(growBox(box, pitch), pitch).filter(
    (place) => index.within(place, 0.75 * pitch).length === 0,
  );
  const sources = corners.map((place): PixelPoint => {
    const straight = applyAffine(toPicture, place);
    const { column, row } = strayNear(place, places, strays, index, step);
    return { column: straight.x + column, row: straight.y + row };
  });
  const all = [...places, ...corners];
  const stood = [...controls.map((control) => control.from), ...sources];
  const { triangles } = new Delaunator(all.flatMap(({ x, y }) => [x, y]));
  unfold(all, stood, triangles);
  return { places: all, sources: stood, triangles };
}

/** The straight map from sheet to picture that fits the controls best; the given one, shifted, where they are too few. */
function straightMap(controls: readonly WarpControl[], toSheet: Affine): Affine {
  const fitted = affineFit(
    controls.map(({ to }) => to),
    controls.map(({ from }) => ({ x: from.column, y: from.row })),
  );
  if (fitted) return fitted;
  const given = invert(toSheet);
  if (controls.length === 0) return given;
  let [x, y] = [0, 0];
  for (const { from, to } of controls) {
    const straight = applyAffine(given, to);
    x += (from.column - straight.x) / controls.length;
    y += (from.row - straight.y) / controls.length;
  }
  return { ...given, e: given.e + x, f: given.f + y };
}

/** How far the controls near a place stray from the straight map, by inverse squares of distance (Shepard 1968). */
function strayNear(
  place: Point,
  places: readonly Point[],
  strays: readonly PixelPoint[],
  index: PointIndex,
  step: number,
): PixelPoint {
  let near: number[] = [];
  for (let radius = 2 * step; near.length < 4 && radius <= REACH * step; radius *= 1.6) {
    near = index.within(place, radius);
  }
  let [sum, column, row, nearest] = [0, 0, 0, Infinity];
  for (const control of near) {
    const away = distance(place, places[control]!);
    const weight = 1 / Math.max(away, 1e-9) ** 2;
    nearest = Math.min(nearest, away);
    sum += weight;
    column += weight * strays[control]!.column;
    row += weight * strays[control]!.row;
  }
  if (sum === 0) return { column: 0, row: 0 };
  const share = Math.max(0, 1 - nearest / (REACH * step)) / sum;
  return { column: column * share, row: row * share };
}

/** The middle one of the distances from each point to its nearest neighbour. */
function usualDistance(places: readonly Point[], index: PointIndex, size: number): number {
  const most = size / 4;
  const apart = Float64Array.from(places, (_, k) => index.nearestTo(k, most)).filter((away) => away > 0);
  return apart.sort()[apart.length >> 1] ?? most;
}

/** Places over the whole box, every second row shifted, so that triangles between them are nearly even. */
function gridOver(box: Box, pitch: number): Point[] {
  const columns = Math.ceil((box.right - box.left) / pitch) + 1;
  const rows = Math.ceil((box.bottom - box.top) / pitch) + 1;
  return Array.from({ length: rows * (columns + 1) }, (_, k) => {
    const row = Math.floor(k / (columns + 1));
    const column = k % (columns + 1);
    return { x: box.left + (column - (row % 2) / 2) * pitch, y: box.top + row * pitch };
  });
}
