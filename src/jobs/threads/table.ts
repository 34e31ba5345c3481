import { done, failed, type Result } from '#base/result.ts';
import { formatInches, formatMm } from '#base/units/format-length.ts';
import type { PaperSize } from '#base/units/paper.ts';
import { threadTable } from '#craft/size/grid.ts';
import type { PrintTrouble } from '#paper/sheet/options.ts';
import { numbered } from '#paper/sheet/reading-sheet.ts';
import { type Sheet, sheetContext } from '#paper/sheet/sheet.ts';
import { clothSheets } from '#paper/sheet/size/cloth-sheet.ts';
import { threadTableSheets } from '#paper/sheet/size/thread-table.ts';
import type { Typeface } from '#paper/type/typeface.ts';
import { emptyPattern } from '#pattern/pins.ts';
import { revisionOf } from '../revision.ts';
import type { Sizing } from '../size/size.ts';
import type { SizeTrouble } from '../trouble.ts';
import { numberInWords } from '../words/number.ts';
import { basisInWords, percentInWords, pinLines } from '../words/size.ts';
import { clothPictures } from './cloth.ts';

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
