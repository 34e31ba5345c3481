import { parse } from 'node:path';
import { cutPattern } from '#jobs/cut/cut.ts';
import { sizeInName } from '#jobs/cut/file-name.ts';
import { readPreset } from '#jobs/cut/preset.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { toCutResult } from '#jobs/results/cut.ts';
import { resultText } from '#jobs/results/text.ts';
import { cutFileInWords, cuttingNoteInWords } from '#jobs/words/cut.ts';
import { cautions } from '#paper/cut/cautions.ts';
import { openFonts } from '../files/fonts.ts';
import { openPattern } from '../files/pattern.ts';
import { readInput } from '../files/read.ts';
import { writeStandard, writeWhole } from '../files/write.ts';
import {
  bed,
  type CutFlags,
  cutWishOf,
  formatOf,
  kerf,
  numberAbove,
  only,
  wholeAbove,
} from '../options/cut.ts';
import { needed } from '../options/needed.ts';
import { lengthOf, oneOf, paper } from '../options/print.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse } from '../outcome/refused.ts';
import { progressLine } from '../terminal/progress.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

/** `cut`: files for lasers, drills and plotters. */
export const addCut: AddVerb = (pinlight, leave) => {
  const command = pinlight
    .command('cut')
    .summary('make files for lasers, drills and plotters')
    .description(
      'Makes a file from which a laser, a drill or a plotter makes the holes: DXF, SVG or G-code, as the name ends. ' +
        'It holds the holes alone; the card\u2019s outline, the markings and targets are asked for. ' +
        'Ends with exit code 1 where holes run into each other.',
    )
    // The pattern comes first, since --card and --spread would take it for theirs.
    .usage('<pattern> -o <file> [options]')
    .argument('<pattern>', 'a pattern file, or - for standard input')
    .option('-o, --output <file>', 'where the file goes: .dxf, .svg or .gcode');
  for (const [flag, words, ...read] of options) command.option(flag, words, ...(read as [never]));
  command.action(async (name: string, flags: CutFlags) => {
    const output = needed('-o', flags.output, 'a file such as card.dxf, card.svg or card.gcode');
    const wish = cutWishOf(flags, formatOf(output));
    const preset =
      flags.preset === undefined ? null : orRefuse(readPreset(await readInput(flags.preset)), flags.preset);
    const { pattern } = await openPattern(name);
    const typeface = openFonts();
    const line = progressLine();
    line.progress('finding the way from hole to hole', 0);
    const cut = orRefuse(cutPattern(pattern, { typeface, ...wish, ...(preset && { preset }) }), name);
    line.clear();
    const names = cut.files.map(({ suffix, width, height }) =>
      fileName(output, suffix, flags, width, height),
    );
    for (const caution of cautions) say(caution);
    const inputs = [name, ...(flags.preset === undefined ? [] : [flags.preset])];
    for (const [k, { text }] of cut.files.entries()) await writeWhole(names[k]!, text, inputs);
    if (cut.sheet && flags.printThenCut !== undefined) {
      const title = pattern.about.name ?? 'Lace pattern';
      await writeWhole(flags.printThenCut, await sheetsToPdf([cut.sheet], typeface, title, pattern), inputs);
    }
    const notes = cut.notes.map((note) => cuttingNoteInWords(note));
    if (flags.json) {
      await writeStandard(resultText(toCutResult(cut, names, flags.printThenCut ?? null, notes)));
    }
    for (const note of notes) say(note);
    for (const [k, file] of cut.files.entries()) say(cutFileInWords(file, names[k]!));
    leave(cut.notes.some(({ kind }) => kind === 'holes-overlap') ? EXIT.faults : EXIT.done);
  });
};

/** Every option with what it says and how its word is read. */
const options: readonly (readonly [string, string, ((text: string) => unknown)?])[] = [
  ['--hole <length>', 'the finished hole; else a little finer than the pin', lengthOf('--hole', '0.5mm')],
  ['--pin <length>', 'the pin that will stand in it', lengthOf('--pin', '0.55mm')],
  ['--kerf <length>', 'what the beam takes away, or 0 where the shop compensates for it', kerf],
  ['--card-thickness <length>', 'the card\u2019s thickness', lengthOf('--card-thickness', '0.4mm')],
  ['--card [margin]', 'cut the card out as well, last of all: 10 mm from the holes if not said'],
  ['--tabs <count>', 'short bridges that hold the card', wholeAbove('--tabs', 'how many, such as 4')],
  ['--tab-width <length>', 'how wide each is', lengthOf('--tab-width', '1mm')],
  [
    '--film',
    'a second file with the outline of the film, a little larger than the card (never PVC in a laser)',
  ],
  ['--engrave', 'the markings, as lines to engrave'],
  ['--ref', 'the frame and four targets, for aligning only'],
  ['--mirror', 'as seen from the back'],
  ['--only <layers>', 'these layers only, in the same frame: holes, outline, engrave …', only],
  [
    '--spread [mm]',
    'each next hole at least so far from the last, 5 mm if not said, so that the heat spreads',
  ],
  ['--bed <size>', 'the size of the machine\u2019s bed, such as 600x400', bed],
  ['--split', 'in parts that share targets, where the bed is too small'],
  ['--coupon', 'a test coupon as well: five rows of holes to find the kerf with'],
  ['--print-then-cut <file.pdf>', 'the sheet to print first, with targets at the same places as in the file'],
  ['--paper <size>', 'the paper of that sheet', paper],
  ['--preset <file>', 'what your shop or machine wants, kept in a file'],
  [
    '--holes <kind>',
    'how holes are drawn: circle, polyline, or (SVG) arcs',
    oneOf('--holes', ['circle', 'polyline', 'arcs']),
  ],
  ['--stroke <length>', 'SVG: how thin lines are', lengthOf('--stroke', '0.01mm')],
  ['--release <name>', 'DXF: R12 or R2000', releaseOf],
  ['--inch', 'DXF: in inches'],
  ['--feed <number>', 'G-code: mm a minute', numberAbove('--feed', 'mm a minute, such as 600')],
  ['--power <number>', 'G-code: S while cutting', numberAbove('--power', 'a number such as 300')],
  ['--most-power <number>', 'G-code: S at full power', numberAbove('--most-power', 'a number such as 1000')],
  ['--straight', 'G-code: straight lines only, no arcs'],
  [
    '--pierce <ms>',
    'G-code: a standing beam of so many milliseconds a hole (advanced)',
    numberAbove('--pierce', 'milliseconds, such as 100'),
  ],
  ['--sized', 'put the unit and the size into the name of each file'],
  ['--json', 'for machines: what was made, as docs/schema/cut.schema.json describes'],
];

function releaseOf(text: string): 'R12' | 'R2000' {
  return oneOf('--release', ['r12', 'r2000'])(text) === 'r12' ? 'R12' : 'R2000';
}

/** The name that was asked for, with what the file is behind it, and its unit and size where they were asked for. */
function fileName(
  output: string,
  suffix: string,
  { sized, inch }: CutFlags,
  width: number,
  height: number,
): string {
  const { dir, name, ext } = parse(output);
  const size = sized ? sizeInName({ width, height }, inch ? 'in' : 'mm') : '';
  const file = `${name}${suffix}${size}${ext}`;
  return dir === '' ? file : `${dir}${dir.endsWith('/') ? '' : '/'}${file}`;
}
