import type { Place } from './shape.ts';

/** The way of a gimp round an outline with right corners: half a hole outside it, each corner cut for a thick thread. */
export function gimpRound(corners: readonly Place[]): Place[] {
  const sides = corners.map((corner, k) => outward(corner, corners[(k + 1) % corners.length]!));
  const outside = corners.map(([i, j], k): Place => {
    const before = sides.at(k - 1)!;
    const after = sides[k]!;
    return [i + before[0] + after[0], j + before[1] + after[1]];
  });
  return outside.flatMap((corner, k) =>
    cutCorner(outside.at(k - 1)!, corner, outside[(k + 1) % outside.length]!),
  );
}

/** The same along an open way. */
export const gimpPath = (way: readonly Place[]): Place[] =>
  way.flatMap((place, k) => {
    const [before, after] = [way[k - 1], way[k + 1]];
    return before && after ? cutCorner(before, place, after) : [place];
  });

/** Half a hole outward from a side of an outline that runs clockwise on the sheet. */
function outward([i, j]: Place, [p, q]: Place): Place {
  return [Math.sign(q - j) / 2, -Math.sign(p - i) / 2];
}

function cutCorner(before: Place, corner: Place, after: Place): Place[] {
  return [towards(corner, before), towards(corner, after)];
}

/** Half a hole of the way from a place to another. */
function towards([i, j]: Place, [p, q]: Place): Place {
  const steps = Math.max(Math.abs(p - i), Math.abs(q - j));
  const part = Math.min(0.5, steps / 2) / steps;
  return [i + (p - i) * part, j + (q - j) * part];
}
