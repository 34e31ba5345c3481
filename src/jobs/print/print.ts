import type { Progress } from '#base/progress.ts';
import { done, type Result } from '#base/result.ts';
import { type HandEffort, handEffort } from '#craft/route/effort.ts';
import { handOrder } from '#craft/route/hand.ts';
import { findRegularity, roundsOf } from '#craft/true/index.ts';
import { films } from '#paper/ink/tints.ts';
import { filmPreview } from '#paper/sheet/film-preview.ts';
import type { PrintOptions, PrintTrouble } from '#paper/sheet/options.ts';
import { printSheets } from '#paper/sheet/print.ts';
import type { Sheet } from '#paper/sheet/sheet.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Regularity } from '#pattern/structure.ts';
import { revisionOf } from '../revision.ts';
import { paperNoteInWords } from '../words/print.ts';

/** How a pattern is printed; what the pattern itself tells (its revision, the order of pricking) is found here. */
export type PrintWish = Omit<PrintOptions, 'revision' | 'order'> & {
  /** Of the pattern's pins, where it was found beforehand; else it is found here. */
  readonly regularity?: Regularity;
};

/** The sheets of one way of pricking. */
export interface PrintedPattern {
  readonly sheets: readonly Sheet[];
  /** How each complete sheet will look under its film; none for pricking through. */
  readonly previews: readonly Sheet[];
  readonly notes: readonly string[];
  /** What lies ahead of the hand that pricks it. */
  readonly effort: HandEffort;
}

/** All sheets of a pattern for one way of pricking, with the guide that says in which order. */
export function printPattern(
  pattern: Pattern,
  { regularity, ...wish }: PrintWish,
  progress: Progress,
): Result<PrintedPattern, PrintTrouble> {
  const order = handOrder(
    pattern,
    regularity ?? findRegularity(pattern.pins, { rounds: roundsOf(pattern), progress }),
  );
  const printed = printSheets(pattern, { ...wish, revision: revisionOf(pattern), order });
  if (!printed.ok) return printed;
  const { sheets, notes } = printed.value;
  const complete = wish.way === 'film' ? sheets.filter(({ kind }) => kind === 'complete') : [];
  const previews = complete.map((sheet) => filmPreview(sheet, films[wish.film ?? 'blue']));
  return done({
    sheets,
    previews: previews.map(({ sheet }) => sheet),
    notes: [...notes, ...(previews[0]?.notes ?? [])].map(paperNoteInWords),
    effort: handEffort(order),
  });
}
