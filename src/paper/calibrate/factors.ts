import { done, failed, type Result } from '#base/result.ts';
import { likelyCause, type ScaleCause } from './cause.ts';
import type { PrinterCorrection } from './correction.ts';

/** Lengths on a calibration sheet, mm; the diagonals are optional. */
export interface CalibrationLengths {
  readonly across: number;
  readonly down: number;
  /** From the top left corner to the bottom right one. */
  readonly falling?: number;
  /** From the bottom left corner to the top right one. */
  readonly rising?: number;
}

export interface Calibration {
  readonly correction: PrinterCorrection;
  /** How far the print leans to the right over 200 mm down; undefined where the diagonals were not measured. */
  readonly leanOver200?: number;
  /** Whether that is more than the eye and the hand let pass, and is corrected if the person agrees. */
  readonly leanMatters: boolean;
  /** A print setting that would explain the readings as well as a printer that is out. */
  readonly cause?: ScaleCause;
}

export type CalibrateTrouble =
  | {
      readonly kind: 'reading-impossible';
      readonly reading: keyof CalibrationLengths;
      readonly value: number;
    }
  | {
      readonly kind: 'reading-out-of-range';
      readonly axis: 'across' | 'down';
      readonly measured: number;
      readonly nominal: number;
      readonly cause: ScaleCause | undefined;
    };

/** Factors further from 1 than this are a wrong setting, not a printer that is a little out. */
export const LEAST_FACTOR = 0.97;
export const MOST_FACTOR = 1.03;

/** A lean of more than this over 200 mm down is worth correcting, mm. */
export const LEAN_THAT_MATTERS = 0.3;

/** A second print is true if both axes are within this share of their nominal length. */
export const VERIFIED_WITHIN = 0.002;

/** The factor of one axis: 100.4 measured for 100 gives 0.99602. */
export const factor = (nominal: number, measured: number): number => nominal / measured;

/** The correction that readings of a first print call for; the lean only where `correctLean` says so. */
export function calibrate(
  nominal: CalibrationLengths,
  measured: CalibrationLengths,
  correctLean: boolean,
): Result<Calibration, CalibrateTrouble> {
  for (const reading of ['across', 'down', 'falling', 'rising'] as const) {
    const value = measured[reading];
    if (value !== undefined && !(value > 0 && value < 10_000))
      return failed({ kind: 'reading-impossible', reading, value });
  }
  for (const axis of ['across', 'down'] as const) {
    const f = factor(nominal[axis], measured[axis]);
    if (f < LEAST_FACTOR || f > MOST_FACTOR) {
      const cause = likelyCause(measured[axis] / nominal[axis]);
      return failed({
        kind: 'reading-out-of-range',
        axis,
        measured: measured[axis],
        nominal: nominal[axis],
        cause,
      });
    }
  }
  const lean = leanOf(nominal, measured);
  const leanOver200 = lean === undefined ? undefined : lean * 200;
  const leanMatters = leanOver200 !== undefined && Math.abs(leanOver200) > LEAN_THAT_MATTERS;
  const cause = likelyCause(measured.across / nominal.across) ?? likelyCause(measured.down / nominal.down);
  return done({
    correction: {
      x: factor(nominal.across, measured.across),
      y: factor(nominal.down, measured.down),
      lean: leanMatters && correctLean ? lean! : 0,
    },
    leanMatters,
    ...(leanOver200 === undefined ? {} : { leanOver200 }),
    ...(cause === undefined ? {} : { cause }),
  });
}

/** Whether a second print, made with the correction on, is true. */
export const isVerified = (nominal: CalibrationLengths, measured: CalibrationLengths): boolean =>
  (['across', 'down'] as const).every(
    (axis) => Math.abs(measured[axis] / nominal[axis] - 1) <= VERIFIED_WITHIN,
  );

/**
 * How far a mm down leans to the right. A print that takes (w, h) to (W + k h, H) has diagonals whose squares are
 * (W + k h)^2 + H^2 and (W - k h)^2 + H^2: their difference is 4 W k h.
 */
function leanOf(
  nominal: CalibrationLengths,
  { across, falling, rising }: CalibrationLengths,
): number | undefined {
  if (falling === undefined || rising === undefined) return undefined;
  return (falling ** 2 - rising ** 2) / (4 * across * nominal.down);
}
