import { curvature, leftOf, type Motion } from './motion.ts';
import { add, length, type Point, scale } from './point.ts';

/** The point `offset` mm to the left of a curve; to its right where negative. */
export const besideCurve = (motion: Motion, offset: number): Point =>
  add(motion.place, scale(leftOf(motion), offset));

/**
 * How fast that point moves with the parameter, `growth` being how fast the offset itself grows with it. By Frenet's
 * formulas the parallel of a curve runs 1 + offset * curvature times as fast; where that is negative it runs backward,
 * which happens where the curve bends with a radius smaller than the offset.
 */
export const speedBeside = (motion: Motion, offset: number, growth = 0): number =>
  Math.hypot(length(motion.velocity) * (1 + offset * curvature(motion)), growth);
