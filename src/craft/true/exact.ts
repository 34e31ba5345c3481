import { type Point, subtract } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { Field } from './field.ts';

/**
 * Whether most steps from pin to neighbouring pin come again to a hair, as no hand repeats them: of the steps that are
 * alike, nearly all are the same. It needs no lattice, so it also tells grounds of several pins a cell.
 */
export function stepsRecur({ pins, near, spacing }: Field): boolean {
  const every = Math.max(1, pins.length / MOST_PINS);
  const steps: Point[] = [];
  for (let k = 0; k < pins.length; k += every) {
    const pin = Math.floor(k);
    for (const other of near[pin]!.subarray(0, NEIGHBOURS)) steps.push(subtract(pins[other]!, pins[pin]!));
  }
  if (steps.length < LEAST_STEPS) return false;
  const index = new PointIndex(steps);
  const stride = Math.max(1, steps.length / MOST_ASKED);
  let [asked, same] = [0, 0];
  for (let k = 0; k < steps.length; k += stride) {
    const step = steps[Math.floor(k)]!;
    const alike = index.within(step, ALIKE * spacing).length;
    asked++;
    if (alike >= LEAST_ALIKE && index.within(step, SAME * spacing).length > NEARLY_ALL * alike) same++;
  }
  return same > MOST * asked;
}

const NEIGHBOURS = 4;
const LEAST_STEPS = 40;
/** Enough to tell; more would only cost time. */
const MOST_PINS = 1000;
const MOST_ASKED = 400;
/** Steps that differ by less, in parts of the spacing, are alike; by still less, the same. */
const ALIKE = 0.05;
const SAME = 0.004;
const LEAST_ALIKE = 5;
const NEARLY_ALL = 0.9;
const MOST = 0.7;
