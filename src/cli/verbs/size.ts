import type { PaperSize } from '#base/units/paper.ts';
import { fibres } from '#base/units/yarn/fibre.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { toSizeResult } from '#jobs/results/size.ts';
import { resultText } from '#jobs/results/text.ts';
import { type Sizing, sizePattern } from '#jobs/size/size.ts';
import { sizeSheets, TABLE_TITLE, USUAL_SCALES } from '#jobs/threads/table.ts';
import { resizedInWords, sizeInWords } from '#jobs/words/size.ts';
import { readThreadList, type ThreadEntry } from '#pattern/threads/thread-list.ts';
import { openFonts } from '../files/fonts.ts';
import { openPattern, patternBytes } from '../files/pattern.ts';
import { readInput, STANDARD } from '../files/read.ts';
import { sheetFiles } from '../files/sheets.ts';
import { writeStandard, writeWhole } from '../files/write.ts';
import { badOption } from '../options/bad-option.ts';
import { needed } from '../options/needed.ts';
import { lengthOf, oneOf, paper } from '../options/print.ts';
import {
  cloth,
  copier,
  corner,
  LACES,
  numberAbove,
  type SizeFlags,
  share,
  sizes,
  sizeWishOf,
  wraps,
} from '../options/size.ts';
import { EXIT } from '../outcome/exit.ts';
import { orRefuse, Refused } from '../outcome/refused.ts';
import { clean } from '../terminal/clean.ts';
import { progressLine } from '../terminal/progress.ts';
import { say } from '../terminal/say.ts';
import type { AddVerb } from './verb.ts';

interface Flags extends SizeFlags {
  readonly threads?: string;
  readonly output?: string;
  readonly table?: string;
  readonly paper?: PaperSize;
  readonly sizes?: readonly number[];
  readonly json?: true;
}

/** `size`: a pattern for the thread, the pillow or the handkerchief. */
export const addSize: AddVerb = (pinlight, leave) => {
  pinlight
    .command('size')
    .summary('fit a pattern to a thread, a pillow or a cloth, and say what thread and pins suit')
    .description(
      'Says which threads suit a pattern, which pins and which needle, and makes it larger or smaller: to a thread, a ' +
        'footside spacing, a percentage, or to a whole number of repeats in a length, round a pillow or round a cloth. ' +
        'Without a pattern it says what is known of a thread. Lengths are in mm, or in inches with "in".',
    )
    .argument('[pattern]', 'a pattern file, or - for standard input')
    .option(
      '--thread <label>',
      'the number on the spool, with its system: "NeL 80/2", "Ne 60/2", "16 tex x 2"',
    )
    .option(
      '--fibre <name>',
      `what it is spun of: ${fibres.slice(0, 5).join(', ')} …`,
      oneOf('--fibre', fibres),
    )
    .option('--wraps <number>', 'how often it goes round a ruler, as you counted: 28/cm or 71/in', wraps)
    .option('--threads <file>', 'a list of your own threads, such as examples/threads.json')
    .option('--lace <kind>', LACES.join(', '), oneOf('--lace', LACES), 'torchon')
    .option(
      '--gap <number>',
      'wraps of thread wanted between two footside pins, where you know better',
      numberAbove('--gap', '12'),
    )
    .option(
      '--spacing <length>',
      'the footside spacing, where the pattern does not tell it',
      lengthOf('--spacing', '4mm'),
    )
    .option(
      '--repeat <length>',
      'the length of a repeat, where the pattern does not tell it',
      lengthOf('--repeat', '24mm'),
    )
    .option('--scale <percent>', 'make it this size', share('--scale', '71%'))
    .option(
      '--to-spacing <length>',
      'make it so that footside pins stand so far apart',
      lengthOf('--to-spacing', '4mm'),
    )
    .option('--to-thread', 'make it so that it suits the thread')
    .option('--fit-length <length>', 'whole repeats in this length', lengthOf('--fit-length', '300mm'))
    .option(
      '--fit-roller <length>',
      'whole repeats round a roller pillow, measured round it',
      lengthOf('--fit-roller', '480mm'),
    )
    .option('--fit-cloth <sides>', 'whole repeats on each side of a cloth: 280x280mm', cloth)
    .option(
      '--fit-round <length>',
      'whole repeats round a round cloth, measured across it',
      lengthOf('--fit-round', '150mm'),
    )
    .option('--corner <length>', 'what both corners of a side take of it: 40mm or "2 repeats"', corner)
    .option(
      '--by <way>',
      'to fit, change the "scale" or "ease" the corners',
      oneOf('--by', ['scale', 'ease']),
    )
    .option('--repeats <number>', 'take this number of repeats', numberAbove('--repeats', '12', true))
    .option('--limit <percent>', 'the most that may change to fit, 5% if not said', share('--limit', '3%'))
    .option('--copier <range>', 'what your photocopier can be set to, 25-400% if not said', copier)
    .option('--pin <length>', 'how thick your pins are, as you measured them', lengthOf('--pin', '0.55mm'))
    .option('--with-holes', 'make pins, holes and gimps larger or smaller too, as a copier does')
    .option('-o, --output <file>', 'where the pattern at its new size goes')
    .option(
      '--table <file>',
      'a table to print, .pdf, .svg or .png: which of your threads suits at which size',
    )
    .option('--paper <size>', 'with --table, the paper in your printer: A4, Letter …', paper)
    .option('--sizes <percents>', 'with --table, the sizes to judge: 71%,85%,100%', sizes)
    .option('--json', 'for machines, as docs/schema/size.schema.json describes')
    .action(async (name: string | undefined, flags: Flags) => {
      refuseEmpty(name, flags);
      const list = flags.threads === undefined ? [] : await threadsIn(flags.threads);
      const wish = sizeWishOf(flags, list);
      const file = name === undefined ? null : await openPattern(name);
      const line = progressLine();
      const sizing = orRefuse(sizePattern(file?.pattern ?? null, wish, line.progress), name ?? null);
      line.clear();
      const inputs = [name, flags.threads].flatMap((one) => (one === undefined ? [] : [one]));
      const table = flags.table === undefined ? [] : await tableOf(sizing, flags.table, flags);
      if (flags.output !== undefined && file && sizing.pattern) {
        const sized = { ...file, pattern: sizing.pattern };
        await writeWhole(flags.output, patternBytes(sized, flags.output), inputs);
        say(resizedInWords(sizing));
      }
      for (const [place, content] of table) await writeWhole(place, content, inputs);
      if (flags.output !== STANDARD && flags.table !== STANDARD) {
        await writeStandard(flags.json ? resultText(toSizeResult(sizing)) : clean(sizeInWords(sizing)));
      }
      leave(EXIT.done);
    });
};

/** Nothing to size and nothing to say anything of; files that would both go to standard output. */
function refuseEmpty(name: string | undefined, flags: Flags): void {
  const { thread, wraps: counted, threads, spacing, repeat } = flags;
  if ([name, thread, counted, threads, spacing, repeat].every((one) => one === undefined)) {
    needed(
      'A pattern or a thread',
      undefined,
      'a pattern file, or --thread "NeL 80/2", --wraps 28/cm or --threads with your list',
    );
  }
  if (flags.output !== undefined && name === undefined)
    badOption('-o', flags.output, 'a pattern to size as well');
  if (flags.json && [flags.output, flags.table].includes(STANDARD)) {
    badOption('-o', STANDARD, 'a file: what --json prints goes to standard output');
  }
  if (flags.by === 'ease' && flags.corner === undefined) {
    badOption('--by', 'ease', 'it with --corner: only corners can be eased');
  }
  if (flags.table === STANDARD && process.stdout.isTTY) throw new Refused({ kind: 'not-to-terminal' }, null);
}

async function threadsIn(file: string): Promise<readonly ThreadEntry[]> {
  const text = new TextDecoder().decode(await readInput(file));
  const list = readThreadList(text);
  return list.ok
    ? list.value
    : orRefuse({ ok: false, trouble: { kind: 'bad-threads', trouble: list.trouble } }, file);
}

/** The sheets of the table as files: one PDF, or a picture for each. */
async function tableOf(sizing: Sizing, table: string, flags: Flags) {
  const size = needed('--paper', flags.paper, 'the size of the paper in your printer, such as A4 or Letter');
  const typeface = openFonts();
  const wish = { typeface, paper: size, scales: flags.sizes ?? USUAL_SCALES };
  const sheets = orRefuse(sizeSheets(sizing, wish), null);
  return sheetFiles(sheets, table, PICTURE_DPI, typeface, () =>
    sheetsToPdf(sheets, typeface, TABLE_TITLE, null),
  );
}

/** Dots an inch of .png files: sharp on a screen, small in a letter. */
const PICTURE_DPI = 150;
