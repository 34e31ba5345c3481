import type { Point } from '#base/geometry/point.ts';
import { machineOrder } from '#craft/route/machine/order.ts';

/** In which order the machine makes the holes: the shortest way, or each next one at least `spread` mm from the last. */
export const orderFor =
  (spread: number | null) =>
  (holes: readonly Point[]): readonly number[] =>
    machineOrder(holes, spread).order;
