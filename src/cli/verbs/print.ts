import type { Progress } from '#base/progress.ts';
import { readProfile } from '#jobs/calibrate/profile.ts';
import { paperUnderDots } from '#jobs/print/paper-picture.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { printPattern } from '#jobs/print/print.ts';
import { toPrintResult } from '#jobs/results/print.ts';
import { resultText } from '#jobs/results/text.ts';
import { printedInWords } from '#jobs/words/print.ts';
import { noCorrection } from '#paper/calibrate/correction.ts';
import type { PatternWithPictures } from '#pattern/container/container.ts';
import { openFonts } from '../files/fonts.ts';
import { openPattern } from '../files/pattern.ts';
import { sheetToPng } from '../files/raster.ts';
import { readInput, STANDARD } from '../files/read.ts';
import { sheetFiles } from '../files/sheets.ts';
import { writeStandard, writeWhole } from '../files/write.ts';
import { badOption } from '../options/bad-option.ts';
import { needed, outputOf } from '../options/needed.ts';
import { lengthOf, oneOf, type PrintFlags, paper, wishOf } from '../options/print.ts';
import { dpi } from '../options/scale.ts';
import { list } from '../options/true.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse, Refused } from '../outcome/refused.ts';
import { readPixels } from '../picture/pixels.ts';
import { progressLine } from '../terminal/progress.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

/** `print`: true scale, for pricking through the paper or under film. */
export const addPrint: AddVerb = (pinlight, leave) => {
  pinlight
    .command('print')
    .summary('print sheets to prick by, true to scale')
    .description(
      'Makes sheets true to scale. Way "through": a sheet of clean dots to prick through, and a marking guide to ' +
        'draw from. Way "film": the complete sheet to stick on the card under film, with cutting lines for both. ' +
        'Either way a guide says in which order to prick. Print them at 100 % ("actual size") and measure both rulers.',
    )
    .argument('<pattern>', 'a pattern file, or - for standard input')
    .option('-o, --output <file>', 'where the sheets go: .pdf, or .svg or .png with one file a sheet')
    .option('--way <way>', '"through" the paper, or under "film"', oneOf('--way', ['through', 'film']))
    .option('--paper <size>', 'the paper in your printer: A4, A3, Letter …', paper)
    .option(
      '--film <colour>',
      'the colour of the film: blue, grey or none',
      oneOf('--film', ['blue', 'grey', 'none']),
    )
    .option(
      '--markings <which>',
      'as "drawn" from the pattern, or the "paper" itself: its picture, its markings brought to the pins',
      oneOf('--markings', ['drawn', 'paper']),
    )
    .option('--preview <file.png>', 'way "film": a picture of the sheet as it will look under the film')
    .option(
      '--mark <shape>',
      'how holes are marked: dot, ring or cross',
      oneOf('--mark', ['dot', 'ring', 'cross']),
    )
    .option('--hole <length>', 'how large these marks are', lengthOf('--hole', '0.6mm'))
    .option('--margin <length>', 'how much of every edge stays white', lengthOf('--margin', '10mm'))
    .option('--overlap <length>', 'how much neighbouring sheets share', lengthOf('--overlap', '15mm'))
    .option('--only <sheets>', 'these sheets only, such as A1,B2', list)
    .option('--printer <file>', 'what "calibrate" measured of your printer')
    .option('--date <text>', 'a date to print on every sheet')
    .option('--dpi <number>', 'dots an inch of .png files', dpi, 300)
    .option('--json', 'for machines: what was printed, as docs/schema/print.schema.json describes')
    .action(async (name: string, flags: PrintFlags) => {
      const output = needed('-o', flags.output, 'a file such as sheets.pdf, to say where the sheets go');
      outputOf(flags);
      const wish = wishOf(flags);
      if (output === STANDARD && process.stdout.isTTY) throw new Refused({ kind: 'not-to-terminal' }, null);
      const file = await openPattern(name);
      const { pattern } = file;
      const printer =
        flags.printer === undefined
          ? null
          : orRefuse(readProfile(await readInput(flags.printer)), flags.printer);
      const typeface = openFonts();
      const line = progressLine();
      // Only the PDF is put right for a printer: other files are the same with and without one.
      const corrected = printer &&
        !/\.(svg|png)$/i.test(output) && {
          correction: { x: printer.x, y: printer.y },
          inkSpread: printer.inkSpread,
        };
      const picture = flags.markings === 'paper' ? await paperOf(file, name, line.progress) : null;
      const printed = orRefuse(
        printPattern(
          pattern,
          { typeface, ...wish, ...corrected, ...(picture && { picture }) },
          line.progress,
        ),
        name,
      );
      const files = await sheetFiles(printed.sheets, output, flags.dpi, typeface, () =>
        sheetsToPdf(
          printed.sheets,
          typeface,
          pattern.about.name ?? 'Lace pattern',
          pattern,
          printer ?? noCorrection,
        ),
      );
      const [preview] = printed.previews;
      if (flags.preview !== undefined && preview !== undefined) {
        files.push([flags.preview, await sheetToPng(preview, typeface, 150)]);
      }
      line.clear();
      const inputs = flags.printer === undefined ? [name] : [name, flags.printer];
      for (const [file, content] of files) await writeWhole(file, content, inputs);
      if (flags.json) {
        const result = toPrintResult(
          printed.sheets,
          files.map(([file]) => file),
          printed.notes,
        );
        await writeStandard(resultText(result));
      }
      for (const note of printed.notes) say(note);
      say(printedInWords(printed.sheets.length));
      leave(EXIT.done);
    });
};

/** The picture that the pattern keeps of its paper, its markings brought to where the pins are. */
async function paperOf({ pattern, pictures }: PatternWithPictures, name: string, progress: Progress) {
  const bytes = pattern.paper && pictures.get(pattern.paper.entry);
  const pixels = bytes && orRefuse(await readPixels(bytes), name);
  const { width, height } = pattern.paper ?? { width: 0, height: 0 };
  if (!pixels || pixels.width !== width || pixels.height !== height) {
    badOption(
      '--markings',
      'paper',
      'it only where the pattern keeps the picture of its paper, in a .pinlight file',
    );
  }
  return paperUnderDots(pattern, pixels, progress);
}
