import { cross, length, type Point } from './point.ts';

/** A curve's place at one value of its parameter, with its first and second derivatives. */
export interface Motion {
  readonly place: Point;
  readonly velocity: Point;
  readonly acceleration: Point;
}

/** A smooth curve by a parameter that runs from 0 to `spans`; between whole numbers it is infinitely smooth. */
export interface ParametricCurve {
  readonly spans: number;
  readonly motionAt: (t: number) => Motion;
}

/** Signed curvature, 1/mm: positive where the curve bends clockwise on a sheet whose y runs down. */
export function curvature({ velocity, acceleration }: Motion): number {
  const speed = length(velocity);
  return cross(velocity, acceleration) / (speed * speed * speed);
}

/** The unit step to the left of the way, as seen when walking along the curve on a sheet whose y runs down. */
export function leftOf({ velocity }: Motion): Point {
  const speed = length(velocity);
  return { x: velocity.y / speed, y: -velocity.x / speed };
}
