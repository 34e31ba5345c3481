import { distance, type Point } from '#base/geometry/point.ts';
import { shortestTour } from './shortest.ts';
import { spreadOrder } from './spread.ts';

/** In which order a machine makes the holes, and what that means. Lengths in the unit of the holes. */
export interface MachineOrder {
  /** Every hole once, by index. */
  readonly order: readonly number[];
  /** The whole way, with the way back from the last hole to the first. */
  readonly length: number;
  /** The shortest step from a hole to the next, with the way back; 0 for fewer than two holes. */
  readonly nearest: number;
  /** How many steps are shorter than asked for; 0 where nothing was asked for. */
  readonly tooNear: number;
}

/**
 * The machine's order of the holes: the shortest way, or one on which each next hole stands at least `spread` from the
 * last where that can be. It starts at the hole nearest the lower left corner, where machines have their origin.
 */
export function machineOrder(holes: readonly Point[], spread: number | null = null): MachineOrder {
  const order = fromCorner(spread === null ? shortestTour(holes).order : spreadOrder(holes, spread), holes);
  const steps = order.map((hole, at) => distance(holes[hole]!, holes[order[(at + 1) % order.length]!]!));
  return {
    order,
    length: steps.reduce((sum, step) => sum + step, 0),
    nearest: steps.length < 2 ? 0 : steps.reduce((least, step) => Math.min(least, step)),
    tooNear: spread === null || steps.length < 2 ? 0 : steps.filter((step) => step < spread).length,
  };
}

function fromCorner(order: readonly number[], holes: readonly Point[]): number[] {
  const fromAxes = ({ x, y }: Point) => x - y;
  let start = 0;
  for (const [at, hole] of order.entries())
    if (fromAxes(holes[hole]!) < fromAxes(holes[order[start]!]!)) start = at;
  return [...order.slice(start), ...order.slice(0, start)];
}
