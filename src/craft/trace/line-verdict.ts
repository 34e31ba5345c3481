import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import type { PinLine, RoundHole } from './line.ts';
import { medianOf } from './line-contrast.ts';
import type { Pair } from './line-pairs.ts';
import { type Looker, type Profile, profileAlong, type Ruler } from './line-profile.ts';

/** Lines seen on less of their way than this are not told. */
const LEAST_SEEN = 0.62;
/** Where less than this share of a way shows any line, it is not looked into further. */
const LEAST_GLIMPSED = 0.4;

/** What is seen on the way between two dots, clear of the dots themselves. */
export function profileBetween(
  picture: GreyPicture,
  holes: readonly RoundHole[],
  [from, to]: Pair,
  ruler: Ruler,
): Profile {
  const a = holes[from]!;
  const b = holes[to]!;
  const size = Math.hypot(b.column - a.column, b.row - a.row);
  const rim = 0.12 * ruler.dot;
  const start = Math.min(a.diameter / 2 + rim, 0.45 * size) / size;
  const end = 1 - Math.min(b.diameter / 2 + rim, 0.45 * size) / size;
  const at = (t: number): PixelPoint => ({
    column: a.column + t * (b.column - a.column),
    row: a.row + t * (b.row - a.row),
  });
  return profileAlong(picture, at(start), at(end), ruler);
}

/** A first look at every fifth step or so, which rules out most pairs. */
export function glimpsed(
  looker: Looker,
  a: PixelPoint,
  b: PixelPoint,
  ruler: Ruler,
  contrast: number,
): boolean {
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
  const ink = medianOf(Float32Array.from(seen, (k) => way.grey[k]!));
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
  const middle = offset.length / 2;
  const first = typical(seen.filter((k) => k < middle));
  const second = typical(seen.filter((k) => k >= middle));
  if (!first || !second) return () => (first ?? second)!.offset;
  const slope = (second.offset - first.offset) / Math.max(1, second.k - first.k);
  return (k) => first.offset + slope * (k - first.k);

  function typical(half: readonly number[]): { k: number; offset: number } | null {
    if (half.length === 0) return null;
    return {
      k: medianOf(Float32Array.from(half)),
      offset: medianOf(Float32Array.from(half, (k) => offset[k]!)),
    };
  }
}
