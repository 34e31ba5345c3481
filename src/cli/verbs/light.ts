import { Option } from 'commander';
import type { PaperSize } from '#base/units/paper.ts';
import { checkCard } from '#jobs/light/light.ts';
import { checkSheets } from '#jobs/light/sheets.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { toLightResult } from '#jobs/results/light.ts';
import { resultText } from '#jobs/results/text.ts';
import { judgementInWords, lightNoteInWords } from '#jobs/words/light.ts';
import { pictureNoteInWords } from '#jobs/words/picture.ts';
import { openFonts } from '../files/fonts.ts';
import { openPattern } from '../files/pattern.ts';
import { readInput, STANDARD } from '../files/read.ts';
import { sheetFiles } from '../files/sheets.ts';
import { writeStandard, writeWhole } from '../files/write.ts';
import { lengthOf, oneOf, paper } from '../options/print.ts';
import { dpi } from '../options/scale.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse } from '../outcome/refused.ts';
import { readPicture } from '../picture/read.ts';
import { clean } from '../terminal/clean.ts';
import { progressLine } from '../terminal/progress.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

interface LightFlags {
  readonly output?: string;
  readonly json?: true;
  readonly cardThickness?: number;
  readonly paper: PaperSize;
  readonly side: 'front' | 'back';
  readonly dpi: number;
}

/** `light`: the pricked card, held to the light, against its pattern. */
export const addLight: AddVerb = (pinlight, leave) => {
  pinlight
    .command('light')
    .summary('check a pricked card, held against the light, by its pattern')
    .description(
      'Checks a photo of a pricked card against its pattern: which holes are missing, off their places, oval or too ' +
        'wide, and which are too many. Hold the card against a window or a lamp, so that the holes shine; it may lie ' +
        'any way and either side up. Ends with exit code 1 where a fault is found.',
    )
    .argument('<pattern>', 'the pattern file')
    .argument('<photo>', 'a photo or scan of the card (JPEG, PNG, TIFF or WebP)')
    .option(
      '-o, --output <file>',
      'a picture of the card with the verdicts on it and a map true to scale to prick again by: .pdf, or .svg or .png ' +
        'with one file a sheet',
    )
    .addOption(
      new Option('--paper <size>', 'the paper in your printer: A4, A3, Letter …')
        .argParser(paper)
        .default(paper('A4'), 'A4'),
    )
    .option(
      '--side <side>',
      'from which side the map is seen: front or back',
      oneOf('--side', ['front', 'back']),
      'front',
    )
    .option('--dpi <number>', 'dots an inch of .png files', dpi, 300)
    .option('--json', 'for machines, as docs/schema/light.schema.json describes')
    .option(
      '--card-thickness <length>',
      'how thick the card is: tells how far the needle leant where a hole is oval',
      lengthOf('--card-thickness', '0.3 mm'),
    )
    .action(async (patternName: string, photoName: string, flags: LightFlags) => {
      const { pattern } = await openPattern(patternName);
      const photo = orRefuse(await readPicture(await readInput(photoName), photoName), photoName);
      const line = progressLine();
      const judgement = orRefuse(
        checkCard(pattern, photo, flags.cardThickness ?? null, line.progress),
        photoName,
      );
      if (flags.output !== undefined) {
        const typeface = openFonts();
        const sheets = checkSheets(pattern, photo, judgement, { ...flags, typeface });
        const files = await sheetFiles(sheets, flags.output, flags.dpi, typeface, () =>
          sheetsToPdf(sheets, typeface, pattern.about.name ?? 'Lace pattern', null),
        );
        for (const [file, content] of files) await writeWhole(file, content, [patternName, photoName]);
      }
      line.clear();
      const notes = [...photo.notes.map(pictureNoteInWords), ...judgement.notes.map(lightNoteInWords)];
      if (flags.json) await writeStandard(resultText(toLightResult(judgement, notes)));
      else await writeWhole(STANDARD, clean(judgementInWords(judgement)), [patternName, photoName]);
      for (const note of notes) say(note);
      const { missing, extra, offCentre, oval, large } = judgement;
      const faults = missing.length + extra.length + offCentre.length + oval.length + large.length;
      leave(faults > 0 ? EXIT.faults : EXIT.done);
    });
};
