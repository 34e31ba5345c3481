import { widthOf } from '#base/geometry/box.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { InkMark } from '../../drawing/mark.ts';
import { textLine, wrapLines } from '../../type/lettering.ts';
import { bodyBold, lineStep, smallLetters } from '../../type/style.ts';
import type { Typeface } from '../../type/typeface.ts';
import { type Block, gap, heading, item, paragraph } from '../flow.ts';
import { roomOn } from '../furniture.ts';
import { readingSheets, type Unnumbered } from '../reading-sheet.ts';
import type { SheetContext } from '../sheet.ts';
import { type Cloth, clothPicture, enlargement } from './cloth-picture.ts';

/** One density to be judged. */
export interface ClothPatch {
  readonly cloth: Cloth;
  /** What it is, in two or three words: 'right'. */
  readonly title: string;
  /** At which size, and how much of the ground it covers. */
  readonly words: readonly string[];
}

/** Cloth stitch of one thread at a few sizes, side by side, from open to closed. */
export interface ClothPictures {
  /** Which thread this is, and how its thickness is known. */
  readonly thread: readonly string[];
  readonly patches: readonly ClothPatch[];
}

/** How densely a thread covers: each patch as large as life, and many times larger. */
export function clothSheets(context: SheetContext, paper: PaperSize, cloths: ClothPictures): Unnumbered[] {
  const { typeface } = context;
  const width = widthOf(roomOn(context, paper));
  const column = (width - (cloths.patches.length - 1) * BETWEEN) / Math.max(1, cloths.patches.length);
  const times = enlargement(
    cloths.patches.map(({ cloth }) => cloth),
    column,
  );
  const blocks: Block[] = [
    gap(3),
    ...cloths.thread.flatMap((words) => paragraph(typeface, words, width)),
    gap(3),
    heading(typeface, 'As large as life'),
    patchesBlock(cloths.patches, column, Math.min(column, LIFE), 1),
    wordsBlock(typeface, cloths.patches, column),
    gap(4),
    heading(typeface, `${times} times as large`),
    patchesBlock(cloths.patches, column, column, times),
    gap(4),
    heading(typeface, 'How to judge it'),
    ...JUDGE.flatMap((words) => item(typeface, { dot: true }, words, width)),
  ];
  return readingSheets(
    context,
    {
      kind: 'cloth-picture',
      title: 'How the cloth stitch will cover',
      advice: 'hold it at the distance of your pillow',
      paper,
    },
    blocks,
  );
}

const JUDGE = [
  'Hold the sheet as far away as your pillow stands. Does the cloth stitch look whole, or as a net?',
  'The picture comes from geometry alone: threads as round as their measured thickness, evenly spread. Worked lace draws together, and washing fills it a little.',
  'Too open: take a thicker thread, or print the pattern smaller. Too close: a thinner thread, or print it larger. Wraps that you count yourself make the picture truer.',
];

/** Between two patches, mm. */
const BETWEEN = 6;

/** A patch as large as life is no wider, mm. */
const LIFE = 46;

function patchesBlock(patches: readonly ClothPatch[], column: number, size: number, times: number): Block {
  return {
    height: size + 1.5,
    keepWithNext: times === 1,
    draw: ({ x, y }) =>
      patches.flatMap(({ cloth }, k) => {
        const left = x + k * (column + BETWEEN);
        return clothPicture(cloth, { left, right: left + size, top: y, bottom: y + size }, times);
      }),
  };
}

function wordsBlock(typeface: Typeface, patches: readonly ClothPatch[], column: number): Block {
  const columns = patches.map(({ title, words }) => ({
    title: wrapLines(typeface, title, bodyBold, column),
    words: words.flatMap((line) => wrapLines(typeface, line, smallLetters, column)),
  }));
  const heights = columns.map(
    ({ title, words }) => title.length * lineStep(bodyBold) + words.length * lineStep(smallLetters),
  );
  return {
    height: Math.max(0, ...heights) + 1,
    draw: ({ x, y }) =>
      columns.flatMap(({ title, words }, k): InkMark[] => {
        const left = x + k * (column + BETWEEN);
        const below = y + title.length * lineStep(bodyBold);
        return [
          ...title.map((line, row) =>
            textLine(typeface, line, bodyBold, {
              at: { x: left, y: y + bodyBold.size + row * lineStep(bodyBold) },
            }),
          ),
          ...words.map((line, row) =>
            textLine(typeface, line, smallLetters, {
              at: { x: left, y: below + smallLetters.size + row * lineStep(smallLetters) },
            }),
          ),
        ];
      }),
  };
}
