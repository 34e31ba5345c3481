import { heightOf, widthOf } from '#base/geometry/box.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { CalibrationLengths } from '../calibrate/factors.ts';
import { type Block, flow, gap, heading, item } from './flow.ts';
import { furniture } from './furniture.ts';
import type { PrintTrouble } from './options.ts';
import { RULER_LENGTH, ruler } from './ruler.ts';
import type { Sheet, SheetContext } from './sheet.ts';

/**
 * A sheet to put on a copier: rulers across and down in several places, since a copier need not stretch the whole
 * page alike.
 */
export function photocopySheet(context: SheetContext, paper: PaperSize): Result<Sheet, PrintTrouble> {
  const { typeface } = context;
  const about = {
    kind: 'photocopy',
    id: 'photocopy',
    title: 'Photocopy sheet',
    advice: 'copy it at 100 %, then measure the copy',
    label: '1 of 1',
    page: 'one page',
    paper,
  } as const;
  const frame = furniture(context, about);
  const { room } = frame;
  const [width, height] = [widthOf(room), heightOf(room)];
  const down = room.bottom - RULER_LENGTH - 2;
  const text = {
    left: room.left + 14,
    right: room.right - 14,
    top: room.top + height * 0.16,
    bottom: down - 16,
  };
  const advice: Block[] = [
    heading(typeface, 'Printing anew is better than copying'),
    ...[
      'Every copy is a little off, and a copy of a copy is off twice: print the pattern anew whenever you can.',
      'If you must copy, copy the print itself, at 100 %, flat on the glass, with no automatic fitting.',
    ].flatMap((words) => item(typeface, { dot: true }, words, text.right - text.left)),
    gap(3),
    heading(typeface, 'To measure a copier'),
    ...[
      'Print this sheet with your printer already calibrated, and measure it: all rulers must be 100 mm.',
      'Copy it. Measure the rulers of the copy across and down, at the top, in the middle and at the bottom.',
      'Type in the mean of those across and the mean of those down as a photocopy profile of its own.',
    ].flatMap((words, k) => item(typeface, { number: `${k + 1}` }, words, text.right - text.left)),
  ];
  const pages = flow(advice, text);
  if (pages.length > 1 || width < RULER_LENGTH + 20) {
    return failed({
      kind: 'print-paper-too-small',
      paper: paper.name,
      width: paper.width,
      height: paper.height,
    });
  }
  const middle = room.left + (width - RULER_LENGTH) / 2;
  return done({
    kind: about.kind,
    id: about.id,
    title: about.title,
    paper,
    marks: [
      ...frame.marks,
      ...ruler(typeface, { x: middle, y: room.top + 12 }, 'across'),
      ...ruler(typeface, { x: middle, y: down - 8 }, 'across'),
      ...ruler(typeface, { x: room.left + width / 2, y: down }, 'down'),
      ...ruler(typeface, { x: room.right - 8, y: down }, 'down'),
      ...pages[0]!,
    ],
  });
}

/** What the rulers of the photocopy sheet measure. */
export const photocopyLengths: CalibrationLengths = { across: RULER_LENGTH, down: RULER_LENGTH };
