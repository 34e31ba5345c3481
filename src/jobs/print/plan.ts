import { type Box, boxHolds, boxOf, heightOf, widthOf } from '#base/geometry/box.ts';
import { done, type Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { PrintTrouble } from '#paper/sheet/options.ts';
import { planSheets } from '#paper/sheet/plan.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { revisionOf } from '../revision.ts';
import { paperNoteInWords } from '../words/print.ts';
import type { PrintWish } from './print.ts';

/** One sheet's part of the pattern. */
export interface PlannedSheet {
  /** 'A2': second sheet of the first row. */
  readonly name: string;
  readonly window: Box;
  /** Holes that are on it; a sheet without any need not be printed. */
  readonly holes: number;
}

/** How a pattern will lie on its sheets, before they are made: what a person looks at first. Lengths in mm. */
export interface PrintPlan {
  readonly paper: PaperSize;
  readonly columns: number;
  readonly rows: number;
  readonly overlap: number;
  readonly sheets: readonly PlannedSheet[];
  readonly cuts: { readonly across: readonly number[]; readonly down: readonly number[] };
  /** How often each sheet is printed: dots and marking guide, or one complete sheet. */
  readonly editions: number;
  /** From the middle of the outermost pins to the middle of those opposite. */
  readonly size: { readonly width: number; readonly height: number };
  readonly notes: readonly string[];
}

/** Plans what `printPattern` would make of the same wish. */
export function planPrint(pattern: Pattern, wish: PrintWish): Result<PrintPlan, PrintTrouble> {
  const planned = planSheets(pattern, { ...wish, revision: revisionOf(pattern) });
  if (!planned.ok) return planned;
  const { layout, editions, notes } = planned.value;
  const { paper, columns, rows, overlap, cuts, tiles } = layout;
  const pins = boxOf(pattern.pins);
  return done({
    ...{ paper, columns, rows, overlap, cuts },
    sheets: tiles.map(({ name, window }) => ({
      name,
      window,
      holes: pattern.pins.filter((pin) => boxHolds(window, pin)).length,
    })),
    editions: editions.length,
    size: { width: widthOf(pins), height: heightOf(pins) },
    notes: notes.map(paperNoteInWords),
  });
}
