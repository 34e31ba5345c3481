import { distance, type Point, scale } from '#base/geometry/point.ts';
import { failed, type Result } from '#base/result.ts';
import { MAX_PINS, MIN_LENGTH } from '#pattern/file/limits.ts';
import type { Pattern, Repeat } from '#pattern/pattern.ts';
import { joinPatterns } from './join.ts';
import { shiftPattern } from './move.ts';
import { JOIN_WITHIN } from './names.ts';
import type { ArrangeTrouble } from './trouble.ts';

/**
 * The pattern `count` times, each a `step` after the one before; pins that come to stand on each other are one, and
 * edges go on from one to the next. Throws where the count is no whole number from 1.
 */
export function repeatPattern(pattern: Pattern, step: Point, count: number): Result<Pattern, ArrangeTrouble> {
  if (!Number.isInteger(count) || count < 1) throw new RangeError(`repeatPattern: count is ${count}`);
  if (Math.max(Math.abs(step.x), Math.abs(step.y)) < MIN_LENGTH) return failed({ kind: 'no-step' });
  const given = pattern.pins.length * count;
  if (given > MAX_PINS) return failed({ kind: 'too-many-pins', given, most: MAX_PINS });
  const copies = Array.from({ length: count }, (_, k) =>
    k === 0 ? pattern : shiftPattern(pattern, scale(step, k)),
  );
  const joined = joinPatterns(copies);
  return joined.ok
    ? { ok: true, value: { ...joined.value, repeat: repeatOf(pattern, step, count) } }
    : joined;
}

/** A pattern of whole repeats that is set on by just their length has so many times more of them. */
function repeatOf({ repeat }: Pattern, step: Point, count: number): Repeat {
  if (!repeat?.count || distance(scale(repeat.step, repeat.count), step) > JOIN_WITHIN)
    return { step, count };
  return { step: repeat.step, count: repeat.count * count };
}
