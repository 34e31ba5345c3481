import { done, failed, type Result } from '#base/result.ts';
import { formatInches, formatMm } from '#base/units/format-length.ts';
import type { PaperSize } from '#base/units/paper.ts';
import { type ClothHand, clothOf, latticeCloth } from '#craft/size/cloth.ts';
import { type LaceKind, threadTable, wrapsInGap } from '#craft/size/grid.ts';
import type { Thread } from '#craft/size/thread.ts';
import type { PrintTrouble } from '#paper/sheet/options.ts';
import { numbered } from '#paper/sheet/reading-sheet.ts';
import { type Sheet, sheetContext } from '#paper/sheet/sheet.ts';
import { type ClothPatch, type ClothPictures, clothSheets } from '#paper/sheet/size/cloth-sheet.ts';
import { threadTableSheets } from '#paper/sheet/size/thread-table.ts';
import type { Typeface } from '#paper/type/typeface.ts';
import { emptyPattern } from '#pattern/pins.ts';
import { revisionOf } from '../revision.ts';
import { numberInWords } from '../words/number.ts';
import { basisInWords, percentInWords, pinLines } from '../words/size.ts';
import type { Sizing } from './size.ts';
import type { SizeTrouble } from './wish.ts';

export interface TableWish {
  readonly typeface: Typeface;
  readonly paper: PaperSize;
  /** Sizes to judge, as factors of the pattern's new size. */
  readonly scales: readonly number[];
}

/** One A size down and up, and steps between: what a copier or a printer is usually set to. */
export const USUAL_SCALES: readonly number[] = [Math.SQRT1_2, 0.8, 0.9, 1, 1.1, 1.25, Math.SQRT2];

/** The table of threads and sizes to print with a pattern, and the picture of how the best of them covers. */
export function sizeSheets(
  sizing: Sizing,
  { typeface, paper, scales }: TableWish,
): Result<Sheet[], SizeTrouble | PrintTrouble> {
  const { after, wish, pattern } = sizing;
  if (after.spacing === null) return failed({ kind: 'size-no-spacing' });
  if (wish.threads.length === 0) return failed({ kind: 'size-no-thread' });
  const spacing = after.spacing;
  const rows = threadTable(wish.threads, spacing, wish.wraps, scales);
  const context = sheetContext(pattern?.about ?? {}, {
    typeface,
    revision: revisionOf(pattern ?? emptyPattern),
  });
  const table = threadTableSheets(context, paper, {
    basis: [
      `Footside pins stand ${formatMm(spacing)} (${formatInches(spacing)}) apart at 100 %.`,
      ...basisInWords(sizing),
    ],
    sizes: scales.map((scale) => ({
      percent: percentInWords(scale),
      mm: formatMm(spacing * scale),
      inches: formatInches(spacing * scale),
    })),
    rows: rows.map(({ thread, scale, at }) => ({
      name: thread.name,
      about: `${thread.fibre}, ${numberInWords(thread.wrapsPerCm, 1)} wraps a cm${thread.wrapsFrom === 'measured' ? '' : ', about'}`,
      percent: `${numberInWords(scale * 100, 0)} %`,
      cells: at.map(({ fit, wraps }) => ({ fit, wraps: numberInWords(wraps, 1) })),
    })),
    pins: pinLines(sizing),
  });
  if (!table.ok) return table;
  const cloth = clothSheets(context, paper, clothPictures(rows[0]!.thread, spacing, sizing));
  return done(numbered([...table.value, ...cloth]));
}

/** The thread in cloth stitch where it is rather thin, right and rather thick for the lace. */
function clothPictures(thread: Thread, spacing: number, { wish, pattern }: Sizing): ClothPictures {
  const tan = Math.tan((groundAngle(pattern?.recipe, wish.lace) * Math.PI) / 180);
  const patch = ({ title, of }: (typeof PATCHES)[number]): ClothPatch => {
    const wide = (spacing * wish.wraps * of) / wrapsInGap(thread, spacing);
    const cloth = clothOf(latticeCloth((wide / 2) * tan, wide / 2), thread);
    return {
      title,
      cloth: {
        passives: { apart: 1 / cloth.passivesPerMm, diameter: thread.wrapped },
        workers: { apart: 1 / cloth.workersPerMm, diameter: thread.wrapped },
      },
      words: [
        `Footside ${formatMm(wide)}: print the pattern at ${percentInWords(wide / spacing)}.`,
        `Threads hide ${numberInWords(cloth.cover.whole * 100, 0)} % of the ground (${HAND[cloth.hand]}).`,
      ],
    };
  };
  return {
    thread: [
      `${thread.name}: ${thread.fibre}, ${formatMm(thread.wrapped, 3)} thick${
        thread.wrapsFrom === 'measured'
          ? ' by the wraps that were counted.'
          : ' as its number lets one expect.'
      }`,
    ],
    patches: PATCHES.map(patch),
  };
}

/** As far to either side as a thread can still be worked. */
const PATCHES = [
  { title: 'Open', of: 1.2 },
  { title: 'Just right', of: 1 },
  { title: 'Full', of: 0.8 },
] as const;

const HAND: Readonly<Record<ClothHand, string>> = {
  open: 'open',
  even: 'even',
  full: 'full',
  crowded: 'crowded: the threads touch',
  impossible: 'more than there is room for',
};

/** Degrees to the footside: the recipe's, else what is usual for the lace (point grounds: common practice, from memory). */
const groundAngle = (recipe: { readonly angle?: number } | object | undefined, lace: LaceKind): number =>
  recipe && 'angle' in recipe && typeof recipe.angle === 'number'
    ? recipe.angle
    : lace === 'point-ground'
      ? 60
      : 45;
