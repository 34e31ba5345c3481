import type { Place } from './shape.ts';

/** What of an outline lies between the first row and the last (Sutherland & Hodgman, CACM 17 (1974)). */
export const clippedPolygon = (corners: readonly Place[], rows: number): Place[] =>
  under(under(corners, 0, 1), rows, -1);

function under(corners: readonly Place[], row: number, side: 1 | -1): Place[] {
  return corners.flatMap((corner, k) => {
    const before = corners.at(k - 1)!;
    const [is, was] = [side * (corner[1] - row) >= 0, side * (before[1] - row) >= 0];
    return [...(is !== was ? [crossing(before, corner, row)] : []), ...(is ? [corner] : [])];
  });
}

/** A way, or what of it is left. */
export interface ClippedPath {
  readonly path: readonly Place[];
  readonly closed: boolean;
}

/** Parts of a way between the first row and the last. */
export function clippedPath(path: readonly Place[], rows: number, closed: boolean): ClippedPath[] {
  const isOn = ([, j]: Place): boolean => j >= 0 && j <= rows;
  if (path.every(isOn)) return [{ path, closed }];
  const off = path.findIndex((place) => !isOn(place));
  const way = closed ? [...path.slice(off), ...path.slice(0, off + 1)] : path;
  const parts: Place[][] = [];
  way.forEach((place, k) => {
    const before = way[k - 1];
    const wasOn = before !== undefined && isOn(before);
    if (before && isOn(place) !== wasOn) {
      const at = crossing(before, place, (wasOn ? place : before)[1] < 0 ? 0 : rows);
      if (wasOn) parts.at(-1)!.push(at);
      else parts.push([at]);
    }
    if (!isOn(place)) return;
    if (!before) parts.push([]);
    parts.at(-1)!.push(place);
  });
  return parts.filter((part) => part.length > 1).map((part) => ({ path: part, closed: false }));
}

function crossing([i, j]: Place, [p, q]: Place, row: number): Place {
  return [i + ((p - i) * (row - j)) / (q - j), row];
}
