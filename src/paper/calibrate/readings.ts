import { done, failed, type Result } from '#base/result.ts';
import { type LengthTrouble, type LengthUnit, parseLength } from '#base/units/parse-length.ts';
import type { CalibrationLengths } from './factors.ts';

/** What was read off a calibration sheet, as it was typed. */
export interface TypedReadings {
  readonly across: string;
  readonly down: string;
  readonly falling?: string;
  readonly rising?: string;
}

/** Which of the readings could not be understood, and why. */
export interface ReadingTrouble {
  readonly kind: 'reading-not-understood';
  readonly reading: keyof CalibrationLengths;
  readonly why: LengthTrouble;
}

/** Typed readings in mm: millimetres or inches, with a point or a comma; `plain` is the unit where none is typed. */
export function parseReadings(
  typed: TypedReadings,
  plain: LengthUnit = 'mm',
): Result<CalibrationLengths, ReadingTrouble> {
  const lengths: Partial<Record<keyof CalibrationLengths, number>> = {};
  for (const reading of ['across', 'down', 'falling', 'rising'] as const) {
    const text = typed[reading];
    if (text === undefined) continue;
    const length = parseLength(text, plain);
    if (!length.ok) return failed({ kind: 'reading-not-understood', reading, why: length.trouble });
    lengths[reading] = length.value;
  }
  return done(lengths as CalibrationLengths);
}
