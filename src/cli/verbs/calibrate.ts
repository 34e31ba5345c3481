import type { PaperSize } from '#base/units/paper.ts';
import { profileFrom, proved, sheetToMeasure, sheetToTry } from '#jobs/calibrate/calibrate.ts';
import { readProfile, writeProfile } from '#jobs/calibrate/profile.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { calibrationInWords, provedInWords } from '#jobs/words/calibrate.ts';
import { noCorrection } from '#paper/calibrate/correction.ts';
import type { CalibrationLengths } from '#paper/calibrate/factors.ts';
import { openFonts } from '../files/fonts.ts';
import { readInput, STANDARD } from '../files/read.ts';
import { writeWhole } from '../files/write.ts';
import { needed } from '../options/needed.ts';
import { date, inkSpread, lengthOf, nameOf, paper } from '../options/print.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse } from '../outcome/refused.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

interface CalibrateFlags {
  readonly sheet?: string;
  readonly paper?: PaperSize;
  readonly test?: true;
  readonly photocopy?: true;
  readonly printer?: string;
  readonly across?: number;
  readonly down?: number;
  readonly falling?: number;
  readonly rising?: number;
  readonly correctLean?: true;
  readonly inkSpread: number;
  readonly name: string;
  readonly program?: string;
  readonly date?: string;
  readonly output?: string;
}

/** `calibrate`: a printer that prints true. */
export const addCalibrate: AddVerb = (pinlight, leave) => {
  pinlight
    .command('calibrate')
    .summary('measure your printer once, so that its prints are true')
    .description(
      'Measures a printer: first makes a sheet to print and measure (--sheet), then turns what you measured into a ' +
        'small file that "print --printer" reads. A second sheet, printed with that file, proves it.',
    )
    .option(
      '--sheet <file.pdf>',
      'make the sheet to measure; with --printer, the one that proves a correction',
    )
    .option('--paper <size>', 'the paper in your printer: A4, A3, Letter …', paper)
    .option('--test', 'with --sheet: only the two rulers, to try before a whole set is printed')
    .option('--photocopy', 'for a copier: the sheet with rulers to copy')
    .option('--printer <file>', 'a printer that was measured before: prove its correction')
    .option('--across <length>', 'what the line across (A) measures', lengthOf('--across', '180.4'))
    .option('--down <length>', 'what the line down (B) measures', lengthOf('--down', '249,5'))
    .option('--falling <length>', 'what the diagonal C measures', lengthOf('--falling', '308'))
    .option('--rising <length>', 'what the diagonal D measures', lengthOf('--rising', '308'))
    .option('--correct-lean', 'correct a lean to one side too, where the diagonals show one')
    .option('--ink-spread <length>', 'the widest gap of the strip that has closed', inkSpread, 0)
    .option('--name <text>', 'what you call this printer', nameOf('--name'), 'My printer')
    .option('--program <text>', 'the program that you print with', nameOf('--program'))
    .option(
      '--date <day>',
      'the day of the measurement, such as 2026-03-14 (today where it is not said)',
      date,
    )
    .option('-o, --output <file.json>', 'where the measured printer goes')
    .action(async (flags: CalibrateFlags) => {
      const typeface = openFonts();
      const before =
        flags.printer === undefined
          ? null
          : orRefuse(readProfile(await readInput(flags.printer)), flags.printer);
      if (flags.sheet !== undefined) {
        const size = needed(
          '--paper',
          flags.paper,
          'the size of the paper in your printer, such as A4 or Letter',
        );
        const use = flags.photocopy ? 'photocopy' : 'print';
        const sheets = flags.test
          ? sheetToTry(typeface, size, before)
          : [orRefuse(sheetToMeasure(typeface, size, use, before), null)];
        const pdf = await sheetsToPdf(sheets, typeface, sheets[0]!.title, null, before ?? noCorrection);
        await writeWhole(flags.sheet, pdf, flags.printer === undefined ? [] : [flags.printer]);
        say(
          'Print it at 100 % ("actual size"), measure from line to line with one good ruler, and type in what you read.',
        );
        return leave(EXIT.done);
      }
      const across = needed(
        '--across',
        flags.across,
        'what the line across (A) measures, or --sheet to make the sheet first',
      );
      const down = needed('--down', flags.down, 'what the line down (B) measures');
      const measured: CalibrationLengths = {
        across,
        down,
        ...(flags.falling !== undefined && { falling: flags.falling }),
        ...(flags.rising !== undefined && { rising: flags.rising }),
      };
      if (before !== null) {
        const profile = orRefuse(proved(typeface, before, measured), flags.printer ?? null);
        // The proof belongs into the very file that it is about.
        await writeWhole(flags.output ?? flags.printer ?? STANDARD, writeProfile(profile), []);
        say(provedInWords(profile));
        return leave(EXIT.done);
      }
      const size = needed('--paper', flags.paper, 'the size of the paper you measured, such as A4 or Letter');
      const names = {
        name: flags.name,
        use: flags.photocopy ? ('photocopy' as const) : ('print' as const),
        ...(flags.program && { program: flags.program }),
        date: flags.date ?? new Date().toISOString().slice(0, 10),
      };
      const options = { correctLean: flags.correctLean ?? false, inkSpread: flags.inkSpread };
      const { profile, calibration } = orRefuse(profileFrom(typeface, size, names, measured, options), null);
      await writeWhole(flags.output ?? STANDARD, writeProfile(profile), []);
      for (const sentence of calibrationInWords(profile, calibration)) say(sentence);
      leave(EXIT.done);
    });
};
