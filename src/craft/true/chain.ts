import { type Point, subtract } from '#base/geometry/point.ts';

/** Pins in order along one line or curve. `steps[k]` is how many spacings lie between pin k and the next: 1, or 2 over a gap. */
export interface Chain {
  readonly pins: readonly number[];
  readonly steps: readonly number[];
  readonly closed: boolean;
}

/** Fewer pins in a row are no evidence of a line. */
export const LEAST_CHAIN = 5;

/** Turns and changes of spacing beyond these are corners, not jitter. Radians; natural logarithm of the ratio. */
const MOST_TURN = 0.95;
const MOST_RATIO = 0.55;

/** How ill a pin between two others continues from one to the other; infinite where it is a corner. */
export function tripleCost(from: Point, pin: Point, to: Point): number {
  const u = subtract(pin, from);
  const v = subtract(to, pin);
  const lu = Math.hypot(u.x, u.y);
  const lv = Math.hypot(v.x, v.y);
  if (lu === 0 || lv === 0) return Infinity;
  const turn = Math.abs(Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y));
  const ratio = Math.abs(Math.log(lv / lu));
  if (turn > MOST_TURN || ratio > MOST_RATIO) return Infinity;
  return (turn / 0.5) ** 2 + (ratio / 0.3) ** 2;
}
