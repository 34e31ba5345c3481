import { done, failed, type Result } from '#base/result.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { PaperNote } from '../note.ts';
import type { Typeface } from '../type/typeface.ts';
import { coverPages } from './cover.ts';
import type { PrintOptions, PrintTrouble } from './options.ts';
import { patternPages } from './pattern-page.ts';
import { planSheets, type SheetPlan } from './plan.ts';
import { guidePages } from './pricking-guide.ts';
import type { Sheet } from './sheet.ts';

export interface Printed {
  readonly sheets: readonly Sheet[];
  readonly notes: readonly PaperNote[];
}

/** All sheets of one way of pricking, in the order in which they are used. */
export function printSheets(pattern: Pattern, options: PrintOptions): Result<Printed, PrintTrouble> {
  const planned = planSheets(pattern, options);
  if (!planned.ok) return planned;
  const plan = planned.value;
  const names = plan.layout.tiles.map(({ name }) => name);
  const stranger = options.only?.find((name) => !names.includes(name.toUpperCase()));
  if (stranger !== undefined) {
    return failed({ kind: 'print-no-such-sheet', sheet: stranger, sheets: names });
  }
  const sheets = chosen(sheetsOf(pattern, options, plan), options.only);
  return done({ sheets, notes: [...missingLetters(sheets, options.typeface), ...plan.notes] });
}

function sheetsOf(pattern: Pattern, options: PrintOptions, plan: SheetPlan): Sheet[] {
  const { context, layout, editions, content } = plan;
  const covers = layout.tiles.length > 1 ? coverPages(context, layout, content, pattern.pins) : [];
  const before = covers.length + editions.length * layout.tiles.length;
  const guides = options.order ? guidePages(context, pattern, options.order, options.paper, options.way) : [];
  const total = before + guides.length;
  return [
    ...covers.map((page, k) => page(k + 1, total)),
    ...editions.flatMap((edition, k) =>
      patternPages(context, edition, layout, covers.length + k * layout.tiles.length + 1, total),
    ),
    ...guides.map((page, k) => page(before + k + 1, total)),
  ];
}

/** The sheets asked for by name, with the cover that maps them; all of them where none is named. */
function chosen(sheets: readonly Sheet[], only: readonly string[] | undefined): Sheet[] {
  if (!only) return [...sheets];
  const wanted = only.map((name) => name.toLowerCase());
  return sheets.filter(({ kind, id }) => kind === 'cover' || wanted.includes(id.split('-').at(-1)!));
}

function missingLetters(sheets: readonly Sheet[], typeface: Typeface): PaperNote[] {
  const letters = new Set<string>();
  for (const mark of sheets.flatMap(({ marks }) => marks)) {
    if (mark.kind === 'text')
      for (const letter of typeface.missingIn(mark.text, mark.weight)) letters.add(letter);
  }
  return letters.size ? [{ kind: 'letters-missing', letters: [...letters] }] : [];
}
