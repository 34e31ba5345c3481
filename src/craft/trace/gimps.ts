import KDBush from 'kdbush';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { shrink } from '#base/picture/shrink.ts';
import { thin } from '#base/picture/thin.ts';
import { LONG, thickCores } from './gimps/core.ts';
import { type PixelPath, pathsOf, placeOf } from './gimps/paths.ts';
import { medianOf } from './lines/contrast.ts';
import type { RoundHole } from './lines/line.ts';

/** A thick line: the way of its middle and its usual width, in pixels. */
export interface TracedGimp {
  readonly path: readonly PixelPoint[];
  readonly closed: boolean;
  readonly width: number;
}

/** At this size of dot no finer pixels are needed. */
const ENOUGH = 5;
/** Holes stand within this many dots of a gimp. */
const BESIDE = 4;

/**
 * The gimps of a pattern: long lines that are clearly thicker than its working lines, up to about twice as thick as its
 * dots, and that have holes beside them, as the edge of a card or a frame has not.
 */
export function findGimps(picture: GreyPicture, holes: readonly RoundHole[]): TracedGimp[] {
  const dot = medianOf(Float32Array.from(holes, (hole) => hole.diameter));
  if (!(dot > 0)) return [];
  const factor = Math.max(1, Math.floor(dot / ENOUGH));
  const small = shrink(picture, factor);
  const size = dot / factor;
  const { width, height } = small;
  const mask = new Uint8Array(width * height);
  const tree = new KDBush(holes.length);
  for (const { column, row } of holes) tree.add(column, row);
  tree.finish();
  const isAmongHoles = ({ path }: TracedGimp): boolean => {
    const near = path.filter(({ column, row }) => tree.within(column, row, BESIDE * dot).length > 0);
    return near.length >= 0.5 * path.length;
  };
  return thickCores(small, size).flatMap(({ pixels, half }) => {
    for (const at of pixels) mask[at] = 1;
    const left = thin(mask, width, pixels);
    for (const at of left) mask[at] = 0;
    const paths = pathsOf(left, width, Math.ceil(2 * size)).filter(
      (path) => path.pixels.length >= LONG * size,
    );
    return paths
      .map((path): TracedGimp => {
        const places = smooth(path, width, size).map(({ column, row }) => ({
          column: (column + 0.5) * factor - 0.5,
          row: (row + 0.5) * factor - 0.5,
        }));
        return { path: places, closed: path.closed, width: 2 * half * factor };
      })
      .filter(isAmongHoles);
  });
}

/** Places about a dot apart along a path, each the mean of the pixels near it. */
function smooth({ pixels, closed }: PixelPath, width: number, dot: number): PixelPoint[] {
  const count = pixels.length;
  const reach = Math.max(1, Math.round(0.5 * dot));
  const steps = Math.max(closed ? 3 : 1, Math.round(count / dot));
  return Array.from({ length: closed ? steps : steps + 1 }, (_, n) => {
    const middle = Math.round((n * (closed ? count : count - 1)) / steps);
    // Near an end the mean is taken over fewer pixels, so that the end stays where it is.
    const near = closed ? reach : Math.min(reach, middle, count - 1 - middle);
    let [column, row] = [0, 0];
    for (let k = middle - near; k <= middle + near; k++) {
      const place = placeOf(pixels[(k + count) % count]!, width);
      column += place.column / (2 * near + 1);
      row += place.row / (2 * near + 1);
    }
    return { column, row };
  });
}
