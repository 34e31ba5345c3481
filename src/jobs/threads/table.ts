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
import type { Sizing } from '../size/size.ts';
import type { SizeTrouble } from '../trouble.ts';
import { numberInWords } from '../words/number.ts';
import { basisInWords, percentInWords, pinLines } from '../words/size.ts';

/** What the PDF of it is called inside. */
export const TABLE_TITLE = 'Which thread at which size';

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
  // Nearest to the pattern's own size first; on the sheet from the finest to the thickest, so that signs run in a slope.
  const byNearness = threadTable(wish.threads, spacing, wish.wraps, [1, ...scales]);
  const rows = byNearness.toSorted((one, other) => one.scale - other.scale);
  const context = sheetContext(pattern?.about ?? {}, {
    typeface,
    revision: revisionOf(pattern ?? emptyPattern),
  });
  const table = threadTableSheets(context, paper, {
    basis: [
      `Footside pins stand ${formatMm(spacing)} (${formatInches(spacing)}) apart at 100 %.`,
      `${basisInWords(sizing)}.`,
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
      cells: at.slice(1).map(({ fit, wraps }) => ({ fit, wraps: wraps.toFixed(1) })),
    })),
    pins: pinLines(sizing),
  });
  if (!table.ok) return table;
  const cloth = clothSheets(context, paper, clothPictures(byNearness[0]!.thread, spacing, sizing));
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
        `the pattern at ${percentInWords(wide / spacing)}`,
        `footside ${formatMm(wide)} (${formatInches(wide)})`,
        `threads hide ${numberInWords(cloth.cover.whole * 100, 0)} % of the ground`,
        ...(cloth.hand in TOO_CLOSE ? [TOO_CLOSE[cloth.hand]!] : []),
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

const TOO_CLOSE: Readonly<Partial<Record<ClothHand, string>>> = {
  crowded: 'the threads touch',
  impossible: 'there is no room for so many',
};

/** Degrees to the footside: the recipe's, else what is usual for the lace (point grounds: common practice, from memory). */
const groundAngle = (recipe: { readonly angle?: number } | object | undefined, lace: LaceKind): number =>
  recipe && 'angle' in recipe && typeof recipe.angle === 'number'
    ? recipe.angle
    : lace === 'point-ground'
      ? 60
      : 45;
