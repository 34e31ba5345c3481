import { widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { InkMark } from '../../drawing/mark.ts';
import { rectangle, segment } from '../../drawing/path.ts';
import { shorten, type TextPlace, textLine } from '../../type/lettering.ts';
import { bodyBold, hairline, LEAST_LINE, smallBold, smallLetters, wash } from '../../type/style.ts';
import type { Typeface } from '../../type/typeface.ts';
import { type Block, gap, heading, item, panel, paragraph } from '../flow.ts';
import { roomOn } from '../furniture.ts';
import type { PrintTrouble } from '../options.ts';
import { readingSheets, type Unnumbered } from '../reading-sheet.ts';
import type { SheetContext } from '../sheet.ts';
import { needleCautions } from '../summary.ts';
import { type FitMark, fitSign, fitWords } from './fit-sign.ts';

/** Which threads suit a pattern at some sizes, ready to be drawn. */
export interface ThreadTable {
  /** What the table goes by, in a sentence or two. */
  readonly basis: readonly string[];
  /** As many as find room beside each other on the paper. */
  readonly sizes: readonly { readonly percent: string; readonly mm: string; readonly inches: string }[];
  readonly rows: readonly {
    readonly name: string;
    /** What is known of the thread, in a few words. */
    readonly about: string;
    /** The size at which it is just right. */
    readonly percent: string;
    /** One for each size. */
    readonly cells: readonly { readonly fit: FitMark; readonly wraps: string }[];
  }[];
  /** Pins and needle for the size that the pattern has. */
  readonly pins: readonly string[];
}

/** The table to lay beside the drawer of threads: one line a thread, one column a size. */
export function threadTableSheets(
  context: SheetContext,
  paper: PaperSize,
  table: ThreadTable,
): Result<Unnumbered[], PrintTrouble> {
  const { typeface } = context;
  const width = widthOf(roomOn(context, paper));
  if (width < NAME + RIGHT_AT + COLUMN * table.sizes.length)
    return failed({
      kind: 'print-paper-too-small',
      paper: paper.name,
      width: paper.width,
      height: paper.height,
    });
  const groups = Array.from({ length: Math.ceil(table.rows.length / GROUP) }, (_, k) =>
    table.rows.slice(k * GROUP, (k + 1) * GROUP),
  );
  const blocks: Block[] = [
    gap(3),
    ...table.basis.flatMap((words) => paragraph(typeface, words, width)),
    gap(3),
    ...groups.flatMap((rows) => [tableBlock(typeface, { ...table, rows }, width), gap(4)]),
    ...keyBlocks(typeface, width),
    gap(4),
    heading(typeface, 'How to use it'),
    ...STEPS.flatMap((step, k) => item(typeface, { number: `${k + 1}` }, step, width)),
    gap(3),
    heading(typeface, 'Pins and needle'),
    ...table.pins.flatMap((words) => item(typeface, { dot: true }, words, width)),
    gap(3),
    panel(typeface, 'Needle and pad', needleCautions.slice(0, 2), width),
  ];
  const sheets = readingSheets(
    context,
    {
      kind: 'thread-table',
      title: 'Which thread at which size',
      advice: 'lay it beside your threads',
      paper,
    },
    blocks,
  );
  return done(sheets);
}

const STEPS = [
  'Find your thread, or the one nearest to it by its wraps in a centimetre.',
  'Go along its line to a dot. At the top of that column stands the size at which to print the pattern.',
  'Is your thread not there? Wind it round a ruler, side by side and not pulled, and count the windings in 2 cm: half of that is its wraps.',
  'Work a small sample before you begin. The table narrows the choice; your hand decides.',
];

/** So many lines stay together under one head. */
const GROUP = 12;
const HEAD = 15.5;
const ROW = 10;
const NAME = 52;
const RIGHT_AT = 14;
/** A column is no narrower than its words. */
const COLUMN = 14;

function tableBlock(typeface: Typeface, { sizes, rows }: ThreadTable, width: number): Block {
  const column = (width - NAME - RIGHT_AT) / Math.max(1, sizes.length);
  const middle = (k: number): number => NAME + (k + 0.5) * column;
  return {
    height: HEAD + rows.length * ROW,
    draw: ({ x, y }) => {
      const put = (text: string, style: typeof smallBold, place: TextPlace) =>
        textLine(typeface, text, style, place);
      const centred = (across: number, down: number): TextPlace => ({
        at: { x: x + across, y: y + down },
        align: 'middle',
      });
      const marks: InkMark[] = [
        ...rows.flatMap((_, k) => (k % 2 ? [] : [band(x, y + HEAD + k * ROW, width)])),
        put('Thread', smallBold, { at: { x: x + 2, y: y + 4 } }),
        ...sizes.flatMap(({ percent, mm, inches }, k) => [
          put(percent, bodyBold, centred(middle(k), 4)),
          put(mm, smallLetters, centred(middle(k), 8.5)),
          put(inches, smallLetters, centred(middle(k), 12.6)),
        ]),
        put('right', smallBold, centred(width - RIGHT_AT / 2, 4)),
        put('at', smallBold, centred(width - RIGHT_AT / 2, 8.5)),
        rule({ x, y: y + HEAD - 0.6 }, width),
      ];
      rows.forEach((row, k) => {
        const top = HEAD + k * ROW;
        const short = (text: string, style: typeof smallBold) => shorten(typeface, text, style, NAME - 4);
        marks.push(
          put(short(row.name, smallBold), smallBold, { at: { x: x + 2, y: y + top + 4.2 } }),
          put(short(row.about, smallLetters), smallLetters, { at: { x: x + 2, y: y + top + 8.3 } }),
          ...row.cells.flatMap(({ fit, wraps }, at) => [
            ...fitSign(fit, { x: x + middle(at), y: y + top + 3.2 }),
            put(wraps, smallLetters, centred(middle(at), top + 8.6)),
          ]),
          put(row.percent, smallBold, centred(width - RIGHT_AT / 2, top + 6)),
        );
      });
      return [...marks, rule({ x, y: y + HEAD + rows.length * ROW }, width)];
    },
  };
}

const band = (x: number, y: number, width: number): InkMark => ({
  kind: 'fill',
  role: 'note',
  path: rectangle({ left: x, top: y, right: x + width, bottom: y + ROW }),
  colour: wash,
});

const rule = (from: Point, width: number): InkMark => ({
  kind: 'stroke',
  role: 'note',
  path: segment({ x: from.x + 0.1, y: from.y }, { x: from.x + width - 0.1, y: from.y }),
  width: LEAST_LINE,
  colour: hairline,
});

/** What the signs mean, as many in a line as fit, and the numbers under them. */
function keyBlocks(typeface: Typeface, width: number): Block[] {
  const lines: { fit: FitMark; words: string; across: number }[][] = [];
  let across = width;
  for (const [fit, words] of Object.entries(fitWords) as [FitMark, string][]) {
    const wide = SIGN_AND_GAP + typeface.widthOf(words, smallLetters.size, smallLetters.weight);
    if (across + wide > width) {
      lines.push([]);
      across = 0;
    }
    lines.at(-1)!.push({ fit, words, across });
    across += wide;
  }
  return [
    ...lines.map((line) => ({
      height: 5,
      draw: ({ x, y }: Point) =>
        line.flatMap(({ fit, words, across: from }) => [
          ...fitSign(fit, { x: x + from + 3, y: y + 2.6 }),
          textLine(typeface, words, smallLetters, { at: { x: x + from + 6.2, y: y + 3.7 } }),
        ]),
    })),
    gap(1),
    ...paragraph(typeface, NUMBERS, width, smallLetters, 1.4),
  ];
}

const SIGN_AND_GAP = 14;

const NUMBERS =
  'No sign: too thick or too thin. The number: how many wraps of the thread lie between two footside pins.';
