import type { Place } from './shape.ts';

/**
 * The way of a gimp round an outline with right corners: half a hole outside it, each corner cut for a thick thread.
 * It has a place beside every pin, since a gimp is drawn as a smooth curve, which overshoots where places lie far apart.
 */
export function gimpRound(corners: readonly Place[]): Place[] {
  const sides = corners.map((corner, k) => outward(corner, corners[(k + 1) % corners.length]!));
  const outside = corners.map(([i, j], k): Place => {
    const before = sides.at(k - 1)!;
    const after = sides[k]!;
    return [i + before[0] + after[0], j + before[1] + after[1]];
  });
  return outside.flatMap((corner, k) => between(corner, outside[(k + 1) % outside.length]!));
}

/** The same along an open way, which keeps its ends. */
export const gimpPath = (way: readonly Place[]): Place[] => [
  way[0]!,
  ...way.slice(1).flatMap((place, k) => between(way[k]!, place)),
  way.at(-1)!,
];

/** Half a hole outward from a side of an outline that runs clockwise on the sheet. */
function outward([i, j]: Place, [p, q]: Place): Place {
  return [Math.sign(q - j) / 2, -Math.sign(p - i) / 2];
}

/** Places a hole apart from one corner to another, the first and the last half a hole from them. */
function between([i, j]: Place, [p, q]: Place): Place[] {
  const steps = Math.max(Math.abs(p - i), Math.abs(q - j));
  const holes = Math.max(1, Math.round(steps));
  return Array.from({ length: holes }, (_, k) => {
    const part = (k + 0.5) / holes;
    return [i + (p - i) * part, j + (q - j) * part];
  });
}
