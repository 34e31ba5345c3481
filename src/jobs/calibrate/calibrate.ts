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
import { photocopySheet } from '#paper/sheet/photocopy-sheet.ts';
import { type Sheet, type SheetContext, sheetContext } from '#paper/sheet/sheet.ts';
import type { Typeface } from '#paper/type/typeface.ts';

/** The sheet to measure by, for a printer or for a copier; with the correction of a profile that is being proved. */
export function sheetToMeasure(
  typeface: Typeface,
  paper: PaperSize,
  use: PrinterProfile['use'],
  profile: PrinterProfile | null,
): Result<Sheet, PrintTrouble> {
  const context = contextOf(typeface, profile);
  return use === 'photocopy' ? done(photocopySheet(context, paper)) : calibrationSheet(context, paper);
}

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
  const nominal = lengthsOn(typeface, paper);
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
  const nominal = lengthsOn(typeface, paper);
  return nominal.ok ? done(afterSecondPrint(profile, nominal.value, measured)) : nominal;
}

function lengthsOn(typeface: Typeface, paper: PaperSize): Result<CalibrationLengths, PrintTrouble> {
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
