import { formatBoth } from '#base/units/format-length.ts';
import { likelyCause, type ScaleCause } from '#paper/calibrate/cause.ts';
import { type CalibrateTrouble, type Calibration, VERIFIED_WITHIN } from '#paper/calibrate/factors.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import type { ProfileTrouble } from '../trouble.ts';
import { numberInWords } from './number.ts';

/** Why readings of a calibration sheet cannot be used, and what to do next. */
export function calibrateTroubleInWords(trouble: CalibrateTrouble): string {
  switch (trouble.kind) {
    case 'reading-impossible':
      return `A length of ${trouble.value} mm cannot be what was measured for ${readingNames[trouble.reading]}. Measure it again, and type it as 170.2, 170,2 or 6 11/16 in.`;
    case 'reading-out-of-range': {
      const { axis, measured, nominal, cause } = trouble;
      const percent = ((measured / nominal) * 100).toFixed(1);
      return `The line ${axis} should be ${nominal} mm and measures ${measured.toFixed(1)} mm (${percent} %). That is a print setting, not the printer: ${scaleCauseInWords(cause)}`;
    }
  }
}

/** Why a printer's profile cannot be used, and what to do next. */
export const profileTroubleInWords = (_trouble: ProfileTrouble): string =>
  'This is not the file of a measured printer. Give that file, or measure the printer anew.';

/** What most likely made a print too large or too small, and how to put it right. */
export function scaleCauseInWords(cause: ScaleCause | undefined): string {
  switch (cause) {
    case 'a4-on-letter':
      return 'a file for A4 was shrunk to fit Letter. Make the file for Letter, or print on A4.';
    case 'letter-on-a4':
      return 'a file for Letter was shrunk to fit A4, or the page was fitted to the printer. Make the file for A4, and print at 100 %.';
    case 'fit-to-page':
      return 'the program fitted the page to the printer. Choose "actual size" or 100 %, and print again.';
    case 'borderless':
      return 'borderless printing is on, which enlarges the page. Turn it off, and print again.';
    case 'browser-print':
      return 'the page was printed from a web browser on a tablet. Save the PDF file and print that, at 100 %.';
    case undefined:
      return 'look for anything like "fit", "scale" or "borderless" in the print dialogue, set it to 100 %, and measure once more.';
  }
}

/** What a print's ruler of 100 mm tells: a print that is true, a printer that is out, or a wrong setting. */
export interface RulerReading {
  readonly is: 'true' | 'printer-out' | 'wrong-setting';
  readonly words: string;
}

/** What to make of a ruler of 100 mm that measures `measured` mm. */
export function rulerInWords(ruler: 'across' | 'down', measured: number): RulerReading {
  const ratio = measured / RULER;
  if (Math.abs(ratio - 1) <= VERIFIED_WITHIN + NOISE)
    return { is: 'true', words: `The ruler ${ruler} is true: ${formatBoth(measured)}.` };
  const says = `The ruler ${ruler} measures ${formatBoth(measured)} instead of 100 mm`;
  const cause = likelyCause(ratio);
  if (cause === undefined && ratio >= OWN.least && ratio <= OWN.most) {
    return {
      is: 'printer-out',
      words: `${says}: the printer itself is a little out. Measure it once, and it is put right.`,
    };
  }
  return { is: 'wrong-setting', words: `${says}: ${cause ? 'most likely ' : ''}${scaleCauseInWords(cause)}` };
}

const RULER = 100;
/** As far as printers themselves are out; more is a setting (what people who print drawings report, no source). */
const OWN = { least: 0.99, most: 1.01 };
/** 100.2 mm is just true, though 100.2 / 100 - 1 is a hair more than 0.002. */
const NOISE = 1e-9;

const readingNames = {
  across: 'the line across (A)',
  down: 'the line down (B)',
  falling: 'the diagonal C',
  rising: 'the diagonal D',
} as const;

/** What a door calls the two things that come next: correcting a lean, and making the sheet that proves it all. */
export interface CalibrateNames {
  readonly correctLean: string;
  readonly secondSheet: string;
}

const asOptions: CalibrateNames = {
  correctLean: '--correct-lean',
  secondSheet: '"calibrate --sheet \u2026 --printer" and this file',
};

/** What the readings of a first print say of a printer, and what to do next. */
export function calibrationInWords(
  profile: PrinterProfile,
  calibration: Calibration,
  { correctLean, secondSheet }: CalibrateNames = asOptions,
): string[] {
  const { leanOver200, leanMatters, cause } = calibration;
  const lines = [
    `This printer is put right by ${numberInWords(profile.x, 5)} across and ${numberInWords(profile.y, 5)} down.`,
  ];
  if (cause !== undefined)
    lines.push(`A print setting would explain these readings as well: ${scaleCauseInWords(cause)}`);
  if (leanOver200 !== undefined && leanMatters) {
    const far = `It pulls the paper askew, by ${Math.abs(leanOver200).toFixed(2)} mm over 200 mm down`;
    lines.push(
      profile.lean === 0 ? `${far}; ${correctLean} corrects that too.` : `${far}, which is corrected.`,
    );
  }
  lines.push(`Now make a second sheet with ${secondSheet}, print it and measure again.`);
  return lines;
}

/** Whether a second print proved the correction. */
export const provedInWords = ({ verified, name }: PrinterProfile): string =>
  verified
    ? `"${name}" is proved: both lines are within 0.2 % of what they should be.`
    : `"${name}" is not proved: a line is more than 0.2 % off. Measure once more, and look for "fit" or "scale" in the print dialogue.`;
