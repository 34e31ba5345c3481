import { numberDrills } from '#base/units/gauges/drills.ts';
import { type GaugeSize, nearestSize } from '#base/units/gauges/gauge.ts';
import { handNeedles, machineNeedles, tubing } from '#base/units/gauges/needles.ts';
import { americanWire, britishWire } from '#base/units/gauges/wire.ts';
import { holeForPin } from '#pattern/hole-for-pin.ts';
import { usualWraps } from './grid.ts';
import type { Thread } from './thread.ts';

/** How fine the work is, by the pins that are usual for it. */
export type Work = 'coarse' | 'medium' | 'fine' | 'very-fine';

export interface PinRule {
  readonly work: Work;
  /** Smallest footside spacing of such work, mm. */
  readonly spacing: number;
  /** Pin diameter, mm. */
  readonly pin: number;
}

/**
 * Usual pins, coarse to fine. The diameters are common practice, no source, from memory; at which spacing one gives
 * way to the next is our own reckoning. Defaults, never rules.
 */
export const usualPins: readonly PinRule[] = [
  { work: 'coarse', spacing: 5, pin: 0.65 },
  { work: 'medium', spacing: 3.5, pin: 0.55 },
  { work: 'fine', spacing: 2.5, pin: 0.45 },
  { work: 'very-fine', spacing: 0, pin: 0.4 },
];

/** The pin for a grid and a thread. */
export interface PinChoice {
  readonly work: Work;
  readonly pin: number;
  /** What made it so fine: the grid, the thread where that is the finer, or the maker's own measured pin. */
  readonly from: 'grid' | 'thread' | 'measured';
  /** Room between two neighbouring footside pins, mm, and how many of the thread lie in it side by side. */
  readonly room: number;
  readonly threadsInRoom: number | null;
}

/**
 * The pin for a footside `spacing` (mm) and the thread: the finer of what either asks for, since a pin too fine only
 * bends while one too thick crowds the threads out. A `measured` diameter goes before both.
 */
export function choosePin(
  spacing: number,
  thread: Thread | null,
  measured: number | null = null,
  rules: readonly PinRule[] = usualPins,
): PinChoice {
  const byGrid = ruleFor(spacing, rules);
  const byThread = thread ? ruleFor((10 * usualWraps.torchon) / thread.wrapsPerCm, rules) : byGrid;
  const finer = byThread.pin < byGrid.pin ? byThread : byGrid;
  const pin = measured ?? finer.pin;
  const room = Math.max(0, spacing - pin);
  return {
    work: finer.work,
    pin,
    from: measured !== null ? 'measured' : finer === byGrid ? 'grid' : 'thread',
    room,
    threadsInRoom: thread ? room / thread.wrapped : null,
  };
}

function ruleFor(spacing: number, rules: readonly PinRule[]): PinRule {
  const rule = rules.find((one) => spacing >= one.spacing) ?? rules.at(-1);
  if (!rule) throw new RangeError('choosePin: no rules');
  return rule;
}

/** The needle that makes the hole, the hole, and what comes near to either in shops. */
export interface PrickingNeedle {
  /** Between these diameters, mm, a needle is slightly thinner than the pin. */
  readonly least: number;
  readonly most: number;
  /** Wanted diameter of needle and hole, mm. */
  readonly wanted: number;
  /** Hand needles by the trade's usual numbers that lie between, nearest to the wanted first. */
  readonly needles: readonly GaugeSize[];
  /** The nearest size in each other gauge that has one between: machine needles, tubing, wire, drills. */
  readonly others: readonly { readonly gauge: string; readonly size: GaugeSize }[];
}

/** Shares of the pin between which a needle is slightly thinner than it: ours, so wide that makers' custom fits in. */
const LEAST_SHARE = 0.75;
const MOST_SHARE = 0.97;

/** The needle that is slightly thinner than a pin of this diameter, mm. */
export function needleForPin(pin: number): PrickingNeedle {
  const [least, wanted, most] = [pin * LEAST_SHARE, holeForPin(pin), pin * MOST_SHARE];
  const off = ({ mm }: GaugeSize): number => Math.abs(mm - wanted);
  const between = ({ mm }: GaugeSize): boolean => mm >= least && mm <= most;
  const needles = handNeedles.sizes.filter(between).sort((a, b) => off(a) - off(b));
  const others = OTHER_GAUGES.map((gauge) => ({ gauge: gauge.name, size: nearestSize(gauge, wanted) }));
  return { least, wanted, most, needles, others: others.filter(({ size }) => between(size)) };
}

/** Gauges in which blades, prickers and drills are numbered. */
const OTHER_GAUGES = [machineNeedles, tubing, britishWire, americanWire, numberDrills] as const;
