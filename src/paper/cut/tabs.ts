import type { Box } from '#base/geometry/box.ts';
import { heightOf, widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { type Path, polyline } from '../drawing/path.ts';

/** Short bridges left in an outline, so that the card stays flat in its sheet until it is cut free by hand. */
export interface Tabs {
  readonly count: number;
  /** Each, along the outline, mm. */
  readonly width: number;
}

/**
 * The pieces of an upright outline that are cut, the tabs between them left standing; and how many tabs found a place.
 * Tabs are spread evenly and moved along where a corner or a hole (nearer than `reach` to the outline) is in the way.
 */
export function outlineWithTabs(
  box: Box,
  { count, width }: Tabs,
  holes: readonly Point[],
  reach: number,
): { paths: Path[]; tabs: number } {
  const round = 2 * (widthOf(box) + heightOf(box));
  const index = new PointIndex(holes);
  const corners = [0, widthOf(box), widthOf(box) + heightOf(box), 2 * widthOf(box) + heightOf(box), round];
  const isFree = (middle: number): boolean =>
    corners.every((corner) => Math.abs(corner - middle) > width / 2 + STEP) &&
    index.within(pointAlong(box, middle), reach + width / 2).length === 0;
  const middles: number[] = [];
  for (let k = 0; k < count; k++) {
    const wanted = ((k + 0.5) * round) / count;
    const shift = shifts(round / count / 2 - width).find((step) => isFree((wanted + step + round) % round));
    if (shift !== undefined) middles.push((wanted + shift + round) % round);
  }
  middles.sort((one, other) => one - other);
  if (middles.length === 0)
    return {
      paths: [
        polyline(
          corners.slice(0, 4).map((at) => pointAlong(box, at)),
          true,
        ),
      ],
      tabs: 0,
    };
  const paths = middles.map((middle, k) => {
    const from = middle + width / 2;
    const next = middles[(k + 1) % middles.length]! + (k + 1 === middles.length ? round : 0);
    const to = next - width / 2;
    const between = [...corners, ...corners.map((corner) => corner + round)].filter(
      (at) => at > from && at < to,
    );
    const stops = [from, ...new Set(between), to];
    return polyline(stops.map((at) => pointAlong(box, at % round)));
  });
  return { paths, tabs: middles.length };
}

const STEP = 0.5;

/** Nought, then further and further to either side. */
function shifts(most: number): number[] {
  const found = [0];
  for (let step = STEP; step <= most; step += STEP) found.push(step, -step);
  return found;
}

/** Clockwise from the top left corner. */
function pointAlong({ left, top, right, bottom }: Box, along: number): Point {
  const [width, height] = [right - left, bottom - top];
  if (along <= width) return { x: left + along, y: top };
  if (along <= width + height) return { x: right, y: top + along - width };
  if (along <= 2 * width + height) return { x: right - (along - width - height), y: bottom };
  return { x: left, y: bottom - (along - 2 * width - height) };
}
