import { z } from 'zod';
import type { PrinterCorrection } from './correction.ts';
import { type CalibrationLengths, isVerified, LEAST_FACTOR, MOST_FACTOR } from './factors.ts';

const text = z.string().trim().min(1).max(200);

/**
 * One printer with one paper and one program, as it was measured. Kept beside the patterns, never inside one: it
 * says something of the printer, nothing of the lace.
 */
export const printerProfileSchema = z.strictObject({
  format: z.literal('pinlight-printer'),
  version: z.literal(1),
  /** What the person calls it. */
  name: text,
  use: z.enum(['print', 'photocopy']),
  printer: text.optional(),
  paper: text,
  program: text.optional(),
  /** Day of the measurement, YYYY-MM-DD. */
  date: z.iso.date(),
  x: z.number().min(LEAST_FACTOR).max(MOST_FACTOR),
  y: z.number().min(LEAST_FACTOR).max(MOST_FACTOR),
  /** mm to the right for each mm down. */
  lean: z.number().min(-0.05).max(0.05),
  /** How much wider the ink makes a dot, mm. */
  inkSpread: z.number().min(0).max(0.3),
  /** Whether a second print with the correction on measured true. */
  verified: z.boolean(),
});

export type PrinterProfile = z.infer<typeof printerProfileSchema>;

/** What a person says of a printer; the rest of its profile is measured. */
export type ProfileNames = Pick<PrinterProfile, 'name' | 'use' | 'printer' | 'paper' | 'program' | 'date'>;

/**
 * The profile that the readings of a first print lead to; a second print has yet to verify it. Throws where a value
 * is out of the schema's range.
 */
export const profileOf = (
  names: ProfileNames,
  { x, y, lean }: PrinterCorrection,
  inkSpread: number,
): PrinterProfile =>
  printerProfileSchema.parse({
    format: 'pinlight-printer',
    version: 1,
    ...names,
    x,
    y,
    lean,
    inkSpread,
    verified: false,
  });

/** The profile after a second print, made with its correction on, was measured. */
export const afterSecondPrint = (
  profile: PrinterProfile,
  nominal: CalibrationLengths,
  measured: CalibrationLengths,
): PrinterProfile => ({ ...profile, verified: isVerified(nominal, measured) });
