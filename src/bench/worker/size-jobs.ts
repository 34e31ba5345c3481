import type { Progress } from '#base/progress.ts';
import type { Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { RepeatChoice, RepeatTrouble } from '#craft/size/repeats.ts';
import { type Sizing, sizePattern } from '#jobs/size/size.ts';
import type { SizeWish } from '#jobs/size/wish.ts';
import type { SizeTrouble } from '#jobs/trouble.ts';
import type { Pattern } from '#pattern/pattern.ts';

type Sized = Result<Sizing, SizeTrouble | RepeatTrouble>;

export interface SizeAnswer {
  /** What suits the pattern as it is. */
  readonly asItIs: Sized;
  /** At the size that is wished; null where none is. */
  readonly wished: Sized | null;
  /** The numbers of repeats that may be chosen from, also where one of them is chosen. */
  readonly choices: readonly RepeatChoice[];
}

/** What suits a pattern as it is, and at the size that is wished. */
export function size(pattern: Pattern, wish: SizeWish, progress: Progress): SizeAnswer {
  const { target } = wish;
  const asItIs = sizePattern(pattern, { ...wish, target: null }, progress);
  if (target === null) return { asItIs, wished: null, choices: [] };
  const wished = sizePattern(pattern, wish, progress);
  const free =
    target.kind === 'fit' && target.repeats !== null
      ? sizePattern(pattern, { ...wish, target: { ...target, repeats: null, way: null } }, progress)
      : wished;
  return { asItIs, wished, choices: (free.ok && free.value.fitted?.choices) || [] };
}

/** The table of threads and sizes to print, as a PDF. */
export async function sizeTable(pattern: Pattern, wish: SizeWish, paper: PaperSize, progress: Progress) {
  // Letters and PDF are large: they are loaded for this alone.
  return (await import('./make/size-table.ts')).sizeTablePdf(pattern, wish, paper, progress);
}
