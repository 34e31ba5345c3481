import type { PixelPoint } from '#base/geometry/point.ts';
import { medianOf } from './contrast.ts';
import type { PinLine, RoundHole } from './line.ts';
import type { Pair } from './pairs.ts';
import type { Looker, Profile, Ruler } from './profile.ts';

/** Lines seen on less of their way than this are not told. */
const LEAST_SEEN = 0.62;
/** Where less than this share of a way shows any line, it is not looked into further. */
const LEAST_GLIMPSED = 0.4;

/** What is seen on the way between two dots, clear of the dots themselves. */
export function profileBetween(looker: Looker, a: RoundHole, b: RoundHole): Profile {
  const size = Math.hypot(b.column - a.column, b.row - a.row);
  const rim = 0.12 * looker.ruler.dot;
  const start = Math.min(a.diameter / 2 + rim, 0.45 * size) / size;
  const end = 1 - Math.min(b.diameter / 2 + rim, 0.45 * size) / size;
  const at = (t: number): PixelPoint => ({
    column: a.column + t * (b.column - a.column),
    row: a.row + t * (b.row - a.row),
  });
  return looker.along(at(start), at(end));
}

/** A first look at every fifth step or so, which rules out most pairs. */
export function glimpsed(looker: Looker, a: PixelPoint, b: PixelPoint, contrast: number): boolean {
  const { ruler } = looker;
  const size = Math.hypot(b.column - a.column, b.row - a.row);
  const [x, y] = [(b.column - a.column) / size, (b.row - a.row) / size];
  const clear = 0.7 * ruler.dot;
  const looks = Math.max(2, Math.min(12, Math.round((size - 2 * clear) / (5 * ruler.unit))));
  let dark = 0;
  for (let k = 0; k < looks; k++) {
    const way = clear + ((k + 0.5) / looks) * (size - 2 * clear);
    if (looker.look(a.column + way * x, a.row + way * y, x, y).contrast >= contrast) dark++;
    if (dark + looks - 1 - k < LEAST_GLIMPSED * looks) return false;
  }
  return true;
}

/** Judges what was seen on the way between two holes: a line, or null. */
export function lineOn([from, to]: Pair, way: Profile, contrast: number, ruler: Ruler): PinLine | null {
  const count = way.contrast.length;
  const seen: number[] = [];
  for (let k = 0; k < count; k++) if (way.contrast[k]! >= contrast) seen.push(k);
  if (seen.length < LEAST_GLIMPSED * count) return null;
  const ink = medianOf(picked(seen, way.grey));
  // Ink on every side, as in the knot where a fan's lines meet or where a gimp crosses, says nothing either way.
  let blind = 0;
  for (let k = 0; k < count; k++) {
    if (way.contrast[k]! < contrast && way.grey[k]! < ink + 0.4 * contrast) blind++;
  }
  const beside = drift(seen, way.offset);
  const straight = seen.filter((k) => Math.abs(way.offset[k]! - beside(k)) <= 1.3 * ruler.unit).length;
  const strength = Math.min(1, straight / (count - Math.min(blind, 0.5 * count)));
  return strength >= LEAST_SEEN ? { from, to, strength } : null;
}

/** How far beside the way a straight line runs, by step: through the medians of the two halves of what was seen. */
function drift(seen: readonly number[], offset: Float32Array): (k: number) => number {
  const split = seen.findIndex((k) => k >= offset.length / 2);
  const [left, right] = split < 0 ? [seen, []] : [seen.slice(0, split), seen.slice(split)];
  if (left.length === 0 || right.length === 0) {
    const only = medianOf(picked(seen, offset));
    return () => only;
  }
  const [from, to] = [left[left.length >> 1]!, right[right.length >> 1]!];
  const [first, second] = [medianOf(picked(left, offset)), medianOf(picked(right, offset))];
  return (k) => first + ((second - first) / (to - from)) * (k - from);
}

function picked(steps: readonly number[], values: Float32Array): Float32Array {
  const chosen = new Float32Array(steps.length);
  for (let n = 0; n < chosen.length; n++) chosen[n] = values[steps[n]!]!;
  return chosen;
}
