import { done, failed, type Result } from '#base/result.ts';
import { type PaperSize, paperNamed } from '#base/units/paper.ts';
import {
  type CalibrateTrouble,
  type Calibration,
  type CalibrationLengths,
  calibrate,
} from '#paper/calibrate/factors.ts';
import {
  afterSecondPrint,
  type PrinterProfile,
  type ProfileNames,
  profileOf,
} from '#paper/calibrate/profile.ts';
import { calibrationLengths, calibrationSheet } from '#paper/sheet/calibration-sheet.ts';
import type { PrintTrouble } from '#paper/sheet/options.ts';
import { photocopyLengths, photocopySheet } from '#paper/sheet/photocopy-sheet.ts';
import { type Sheet, type SheetContext, sheetContext } from '#paper/sheet/sheet.ts';
import { testSheet } from '#paper/sheet/test-sheet.ts';
import type { Typeface } from '#paper/type/typeface.ts';

/** The sheet to measure by, for a printer or for a copier; with the correction of a profile that is being proved. */
export function sheetToMeasure(
  typeface: Typeface,
  paper: PaperSize,
  use: PrinterProfile['use'],
  profile: PrinterProfile | null,
): Result<Sheet, PrintTrouble> {
  const context = contextOf(typeface, profile);
  return use === 'photocopy' ? photocopySheet(context, paper) : calibrationSheet(context, paper);
}

/** What to print and measure before a whole set is printed; with the correction of a profile, where there is one. */
export const sheetToTry = (
  typeface: Typeface,
  paper: PaperSize,
  profile: PrinterProfile | null,
): readonly Sheet[] => testSheet(contextOf(typeface, profile), paper);

/** A profile from the readings of a first print. */
export function profileFrom(
  typeface: Typeface,
  paper: PaperSize,
  names: Omit<ProfileNames, 'paper'>,
  measured: CalibrationLengths,
  options: { readonly correctLean: boolean; readonly inkSpread: number },
): Result<
  { readonly profile: PrinterProfile; readonly calibration: Calibration },
  CalibrateTrouble | PrintTrouble
> {
  const nominal = lengthsOn(typeface, paper, names.use);
  if (!nominal.ok) return nominal;
  const found = calibrate(nominal.value, measured, options.correctLean);
  if (!found.ok) return found;
  const profile = profileOf({ ...names, paper: paper.name }, found.value.correction, options.inkSpread);
  return done({ calibration: found.value, profile });
}

/** The same profile, marked by whether a second print, made with its correction on, measures true. */
export function proved(
  typeface: Typeface,
  profile: PrinterProfile,
  measured: CalibrationLengths,
): Result<PrinterProfile, PrintTrouble> {
  const paper = paperNamed(profile.paper) ?? { name: profile.paper, width: 0, height: 0 };
  const nominal = lengthsOn(typeface, paper, profile.use);
  return nominal.ok ? done(afterSecondPrint(profile, nominal.value, measured)) : nominal;
}

/** What the sheet for this use should measure: long lines for a printer, rulers for a copier. */
function lengthsOn(
  typeface: Typeface,
  paper: PaperSize,
  use: PrinterProfile['use'],
): Result<CalibrationLengths, PrintTrouble> {
  if (use === 'photocopy') return done(photocopyLengths);
  const { name, width, height } = paper;
  const tooSmall = { kind: 'print-paper-too-small', paper: name, width, height } as const;
  const lengths = width > 0 ? calibrationLengths(contextOf(typeface, null), paper) : undefined;
  return lengths === undefined ? failed(tooSmall) : done(lengths);
}

const contextOf = (typeface: Typeface, profile: PrinterProfile | null): SheetContext =>
  sheetContext(
    {},
    { typeface, revision: '1', ...(profile && { correction: { x: profile.x, y: profile.y } }) },
  );
