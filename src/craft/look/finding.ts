import type { Point } from '#base/geometry/point.ts';

/**
 * 'fault': pricked as it is, the card or the lace is spoilt. 'warning': most likely a mistake. 'note': worth knowing
 * before the first hole.
 */
export type Severity = 'fault' | 'warning' | 'note';

/** A size with the unit it is in; 'ratio' for contrast, 'difference' for CIEDE2000, 'share' for 0 to 1. */
export interface Measure {
  readonly value: number;
  readonly unit: 'mm' | 'px' | 'pins' | 'ratio' | 'difference' | 'share';
}

/** One thing that looking over found: which rule, where, what was measured against what is allowed, and in words. */
export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  /** In the pattern's unit; null where the finding is about the whole pattern. */
  readonly at: Point | null;
  /** Indices of the pins it is about, counted from 0; sentences count pins from 1. */
  readonly pins: readonly number[];
  readonly measured?: Measure;
  /** The least or the most that is allowed, as the sentence says. */
  readonly allowed?: Measure;
  /** What, where, and what to do next. */
  readonly sentence: string;
}
