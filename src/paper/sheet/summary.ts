import { widthOf } from '#base/geometry/box.ts';
import type { PaperSize } from '#base/units/paper.ts';
import { type Block, gap, heading, item, panel, paragraph } from './flow.ts';
import { roomOn } from './furniture.ts';
import { numbered, readingSheets } from './reading-sheet.ts';
import type { Sheet, SheetContext } from './sheet.ts';

/** A part of a summary, in plain words. */
export interface SummarySection {
  readonly heading: string;
  /** Running text under the heading. */
  readonly text?: readonly string[];
  /** Each behind a dot, or behind a box where a person should see to it. */
  readonly items?: readonly { readonly words: string; readonly toDo?: boolean }[];
}

/** What was found, moved, proposed and is in doubt, in words, with the cautions that belong to needle and pad. */
export function summarySheets(
  context: SheetContext,
  paper: PaperSize,
  sections: readonly SummarySection[],
  cautions: readonly string[] = needleCautions,
): Sheet[] {
  const { typeface } = context;
  const width = widthOf(roomOn(context, paper));
  const blocks: Block[] = [
    gap(2.5),
    ...sections.flatMap((section) => [
      heading(typeface, section.heading),
      ...(section.text ?? []).flatMap((text) => [...paragraph(typeface, text, width), gap(1.2)]),
      ...(section.items ?? []).flatMap(({ words, toDo }) =>
        item(typeface, toDo ? { box: true } : { dot: true }, words, width),
      ),
      gap(3.2),
    ]),
    panel(typeface, 'Needle and pad', cautions, width),
  ];
  return numbered(
    readingSheets(
      context,
      { kind: 'summary', title: 'Summary', advice: 'read this before pricking anything', paper },
      blocks,
    ),
  );
}

/** Common practice, no source. */
export const needleCautions: readonly string[] = [
  'Prick on a firm pad under the card, and keep your other hand clear of the point.',
  'Hold the needle upright, and put a cork on the pricker whenever you lay it down.',
  'Prick nothing before both rulers on the sheet measure 100 mm.',
];
