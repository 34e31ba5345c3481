import { applyChange } from '#pattern/change/change.ts';
import { removePins } from '#pattern/change/remove-pins.ts';
import type { Pattern, Pin } from '#pattern/pattern.ts';

/** A pattern without the marks that are more likely no pins, and those marks. */
export interface Weighed {
  readonly pattern: Pattern;
  readonly leftOut: readonly Pin[];
}

/**
 * Leaves out what was found with less confidence than `sure`, so that nobody pricks a hole through a letter or a
 * speck. Pins that a person placed carry no confidence and always stay.
 */
export function leaveOutUnsure(pattern: Pattern, sure: number): Weighed {
  const leftOut = pattern.pins.filter(({ confidence }) => confidence !== undefined && confidence < sure);
  if (leftOut.length === 0) return { pattern, leftOut };
  const gone = new Set(leftOut.map(({ id }) => id));
  // A working line that leads to no pin is no working line.
  const marks = pattern.marks.filter(
    (mark) => mark.kind !== 'line' || ![mark.from, mark.to].some((end) => 'pin' in end && gone.has(end.pin)),
  );
  const rest = { ...pattern, marks };
  return { pattern: applyChange(rest, removePins(rest, gone)), leftOut };
}
