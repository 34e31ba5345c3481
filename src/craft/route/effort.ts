import type { PrickingOrder } from '#pattern/order.ts';

/** How fast a hand works. All common practice or our own guess, no source; each maker has her own pace. */
export interface HandPace {
  /** Wax on the needle every three or four holes. */
  readonly holesPerWaxing: number;
  readonly secondsPerHole: number;
  readonly secondsPerSetting: number;
  readonly secondsPerWaxing: number;
}

export const usualPace: HandPace = {
  holesPerWaxing: 4,
  secondsPerHole: 2,
  secondsPerSetting: 15,
  secondsPerWaxing: 3,
};

export interface HandEffort {
  readonly holes: number;
  /** How often the ruler is laid anew. */
  readonly settings: number;
  readonly waxings: number;
  /** Roughly, without a rest; whole minutes, rounded up. */
  readonly minutes: number;
}

/** What lies ahead of a hand that pricks in this order. */
export function handEffort({ passes }: PrickingOrder, pace: HandPace = usualPace): HandEffort {
  const holes = passes.reduce((sum, pass) => sum + pass.order.length, 0);
  const settings = passes.filter((pass) => pass.ruler !== null).length;
  const waxings = Math.ceil(holes / pace.holesPerWaxing);
  const seconds =
    holes * pace.secondsPerHole + settings * pace.secondsPerSetting + waxings * pace.secondsPerWaxing;
  return { holes, settings, waxings, minutes: Math.ceil(seconds / 60) };
}
