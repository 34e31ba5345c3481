import { done, type Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import { profileFrom, proved, sheetToMeasure } from '#jobs/calibrate/calibrate.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { noCorrection } from '#paper/calibrate/correction.ts';
import type { CalibrateTrouble, Calibration, CalibrationLengths } from '#paper/calibrate/factors.ts';
import type { PrinterProfile, ProfileNames } from '#paper/calibrate/profile.ts';
import type { PrintTrouble } from '#paper/sheet/options.ts';
import { openFonts } from '../fonts.ts';

/** What was read from a first print, and of which printer. */
export interface PrinterReadings {
  readonly paper: PaperSize;
  readonly names: Omit<ProfileNames, 'paper'>;
  readonly measured: CalibrationLengths;
  readonly correctLean: boolean;
  readonly inkSpread: number;
}

/** The sheet to measure by; with the correction on where it is to be proved. */
export async function calibrationPdf(
  paper: PaperSize,
  use: PrinterProfile['use'],
  printer: PrinterProfile | null,
): Promise<Result<Uint8Array, PrintTrouble>> {
  const typeface = await openFonts();
  const sheet = sheetToMeasure(typeface, paper, use, printer);
  if (!sheet.ok) return sheet;
  return done(await sheetsToPdf([sheet.value], typeface, sheet.value.title, null, printer ?? noCorrection));
}

export async function measuredPrinter({
  paper,
  names,
  measured,
  ...options
}: PrinterReadings): Promise<
  Result<
    { readonly profile: PrinterProfile; readonly calibration: Calibration },
    CalibrateTrouble | PrintTrouble
  >
> {
  return profileFrom(await openFonts(), paper, names, measured, options);
}

export async function provedPrinter(
  printer: PrinterProfile,
  measured: CalibrationLengths,
): Promise<Result<PrinterProfile, PrintTrouble>> {
  return proved(await openFonts(), printer, measured);
}
