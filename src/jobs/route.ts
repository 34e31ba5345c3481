import type { Progress } from '#base/progress.ts';
import { done, failed, type Result } from '#base/result.ts';
import { type HandEffort, type HandPace, handEffort, usualPace } from '#craft/route/effort.ts';
import { handOrder } from '#craft/route/hand.ts';
import { type MachineOrder, machineOrder } from '#craft/route/machine/order.ts';
import { findRegularity, roundsOf } from '#craft/true/index.ts';
import type { PrickingOrder } from '#pattern/order.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { RouteTrouble } from './trouble.ts';

export interface HandRoute {
  readonly by: 'hand';
  readonly order: PrickingOrder;
  readonly effort: HandEffort;
  readonly pace: HandPace;
}

export interface MachineRoute extends MachineOrder {
  readonly by: 'machine';
  /** The least distance asked for between a hole and the next, mm; null for the shortest way. */
  readonly spread: number | null;
}

/** In which order a hand pricks the holes. */
export function routeByHand(pattern: Pattern, progress: Progress): HandRoute {
  const order = handOrder(pattern, findRegularity(pattern.pins, { rounds: roundsOf(pattern), progress }));
  return { by: 'hand', order, effort: handEffort(order), pace: usualPace };
}

/** In which order a machine makes them; `spread` in mm, which a pattern of unknown scale cannot keep. */
export function routeByMachine(pattern: Pattern, spread: number | null): Result<MachineRoute, RouteTrouble> {
  if (spread !== null && pattern.unit === 'px') return failed({ kind: 'spread-scale-unknown' });
  return done({ by: 'machine', spread, ...machineOrder(pattern.pins, spread) });
}
