import { widthOf } from '#base/geometry/box.ts';
import type { PaperSize } from '#base/units/paper.ts';
import { type Block, gap, heading, item, panel, paragraph } from './flow.ts';
import { roomOn } from './furniture.ts';
import { numbered, readingSheets } from './reading-sheet.ts';
import type { Sheet, SheetContext } from './sheet.ts';

/** One sheet with nothing but the two rulers, to be printed and measured before a whole set is. */
export function testSheet(context: SheetContext, paper: PaperSize): Sheet[] {
  const { typeface } = context;
  const width = widthOf(roomOn(context, paper));
  const steps = [
    'Print this one sheet at 100 % ("actual size"), with no fitting to the page and no borderless printing.',
    'Measure the ruler across and the ruler down with one good ruler, from left edge to left edge of the end lines.',
    'Both 100 mm? Then print the whole set in the very same way, on the same paper.',
  ];
  const blocks: Block[] = [
    gap(4),
    heading(typeface, 'Before you print the whole set'),
    ...steps.flatMap((step, k) => item(typeface, { number: `${k + 1}` }, step, width)),
    gap(4),
    heading(typeface, 'If a ruler is not 100 mm'),
    ...[
      '96 to 98 mm: the program fitted the page to the printer. Choose 100 % or "actual size".',
      '94.1 mm: a file for A4 was shrunk on to Letter.  97.3 mm: a file for Letter was shrunk on to A4.',
      'About 102 mm: borderless printing is on. Turn it off.',
      'About 106 mm: the page was printed from a web browser on a tablet. Print the PDF file itself.',
      '99.0 to 101.0 mm: the printer itself is a little out. Calibrate it once, and the correction is kept.',
    ].flatMap((words) => item(typeface, { dot: true }, words, width)),
    gap(3),
    panel(typeface, 'What you measured', ['Across: ______________ mm', 'Down: ______________ mm'], width),
    gap(2),
    ...paragraph(typeface, 'Keep this sheet with the set: it shows that the print was true.', width),
  ];
  return numbered(
    readingSheets(
      context,
      { kind: 'test', title: 'Test sheet', advice: 'print this first, and measure it', paper },
      blocks,
    ),
  );
}
