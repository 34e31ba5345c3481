import { resolve } from 'node:path';
import type { PixelPicture } from '#base/picture/warp.ts';
import { type PaperSize, paperNamed } from '#base/units/paper.ts';
import { openToWork } from '#jobs/open.ts';
import { mayBePattern } from '#jobs/picture/kind.ts';
import { nameFromFile } from '#jobs/picture/name.ts';
import { makeReady, type ReadyInput } from '#jobs/ready/ready.ts';
import { toReadyResult } from '#jobs/results/ready.ts';
import { resultText } from '#jobs/results/text.ts';
import { tracePicture } from '#jobs/trace/trace.ts';
import { findingsCountInWords } from '#jobs/words/look.ts';
import { SURE } from '#jobs/words/trace.ts';
import { refuseForeign, writeFolder } from '../files/folder.ts';
import { openFonts } from '../files/fonts.ts';
import { sheetToPng } from '../files/raster.ts';
import { readInput } from '../files/read.ts';
import { writeStandard } from '../files/write.ts';
import { type AboutFlags, addAboutOptions, saidOf } from '../options/about.ts';
import { needed } from '../options/needed.ts';
import { oneOf, paper } from '../options/print.ts';
import { addScaleOptions, type ScaleFlags, scaleGiven } from '../options/scale.ts';
import { sure } from '../options/sure.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse } from '../outcome/refused.ts';
import { readPixels } from '../picture/pixels.ts';
import { readPicture } from '../picture/read.ts';
import { nameInWords } from '../terminal/clean.ts';
import { type ProgressLine, progressLine } from '../terminal/progress.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

interface ReadyFlags extends ScaleFlags, AboutFlags {
  readonly output?: string;
  readonly json?: true;
  readonly paper?: PaperSize;
  readonly film: 'blue' | 'grey' | 'none';
  readonly markings: 'drawn' | 'paper';
  readonly sure: number;
}

/** Dots an inch of the pictures in the folder: sharp on a screen, small in a letter. */
const PICTURE_DPI = 150;

/** `ready`: the whole job in one command. */
export const addReady: AddVerb = (pinlight, leave) => {
  const verb = pinlight
    .command('ready')
    .summary('the whole job: from a scan or a pattern to a folder ready to prick by')
    .description(
      'The whole job in one go: finds the pins, straightens them, looks the pattern over and prints it for both ways ' +
        'of pricking, with a picture of what moved and a summary in words. All of it goes into one folder, whose files ' +
        'are numbered in the order in which they are used. Ends with exit code 1 where a fault is found.',
    )
    .argument('<picture-or-pattern>', 'a scan or a pattern file, or - for standard input')
    .option('-o, --output <folder>', 'the folder to make')
    .option('--paper <size>', 'the paper in your printer: A4, A3, Letter … (A4 where it is not said)', paper)
    .option(
      '--film <colour>',
      'the colour of the film: blue, grey or none',
      oneOf('--film', ['blue', 'grey', 'none']),
      'blue',
    )
    .option(
      '--markings <which>',
      'the "paper" itself, where its picture is at hand: its markings, brought to the pins; or lines "drawn" anew',
      oneOf('--markings', ['drawn', 'paper']),
      'paper',
    )

    .option('--sure <share>', 'leave out marks found with less confidence than this, 0 to 1', sure, SURE)
    .option('--json', 'for machines: what was made, as docs/schema/ready.schema.json describes');
  addAboutOptions(addScaleOptions(verb)).action(async (name: string, flags: ReadyFlags) => {
    const output = needed('-o', flags.output, 'a folder, to say where everything goes');
    await refuseForeign(resolve(output), output);
    const line = progressLine();
    const opened = await openInput(name, flags, line);
    const input = { ...opened, pattern: saidOf(opened.pattern, flags) };
    const typeface = openFonts();
    const size = flags.paper ?? paperNamed('A4')!;
    const wish = {
      typeface,
      paper: size,
      film: flags.film,
      sure: flags.sure,
      markings: flags.markings,
      toPixels,
      toPng: (sheet: Parameters<typeof sheetToPng>[0]) => sheetToPng(sheet, typeface, PICTURE_DPI),
    };
    const ready = orRefuse(await makeReady(input, wish, line.progress), name);
    line.clear();
    await writeFolder(output, ready.files);
    if (flags.json) await writeStandard(resultText(toReadyResult(ready)));
    for (const note of input.notes) say(note);
    say(findingsCountInWords(ready.findings));
    if (flags.paper === undefined) say('The sheets are made for A4; give --paper for another size.');
    say(
      `Everything is in ${nameInWords(output)}: read 01-read-me-first.txt, then look at 02-before-and-after.`,
    );
    leave(ready.findings.some(({ severity }) => severity === 'fault') ? EXIT.faults : EXIT.done);
  });
};

async function toPixels(file: Uint8Array): Promise<PixelPicture | null> {
  const pixels = await readPixels(file);
  return pixels.ok ? pixels.value : null;
}

/** A picture is traced, a pattern is opened; what the file is shows in its first bytes. */
async function openInput(name: string, flags: ScaleFlags, { progress }: ProgressLine): Promise<ReadyInput> {
  const bytes = await readInput(name);
  const given = scaleGiven(flags);
  if (mayBePattern(bytes)) return { ...orRefuse(openToWork(bytes), name), notes: [] };
  const picture = orRefuse(await readPicture(bytes, name), name);
  const traced = orRefuse(tracePicture(picture, given, progress), name);
  return { ...traced, pattern: saidOf(traced.pattern, { name: nameFromFile(name) }) };
}
