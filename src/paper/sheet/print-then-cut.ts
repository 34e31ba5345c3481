import { type Affine, translation } from '#base/geometry/affine.ts';
import { heightOf, widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { type PaperSize, turned } from '#base/units/paper.ts';
import { targetMarks } from '../cut/targets.ts';
import type { InkMark } from '../drawing/mark.ts';
import { moveMark } from '../drawing/move.ts';
import { furniture, roomOn } from './furniture.ts';
import type { Sheet, SheetContext } from './sheet.ts';

/** Where a cutting frame lies on a sheet of paper, mm from the paper's top left. */
export interface FrameOnPaper {
  readonly paper: PaperSize;
  readonly toPaper: Affine;
}

/** The frame in the middle of the sheet's room, upright or landscape; undefined where it fits neither way. */
export function frameOnPaper(
  context: SheetContext,
  paper: PaperSize,
  frame: { readonly width: number; readonly height: number },
): FrameOnPaper | undefined {
  for (const size of [paper, turned(paper)]) {
    const room = roomOn(context, size);
    const [spareX, spareY] = [widthOf(room) - frame.width, heightOf(room) - frame.height];
    if (spareX < 0 || spareY < 0) continue;
    return { paper: size, toPaper: translation(room.left + spareX / 2, room.top + spareY / 2) };
  }
  return undefined;
}

/** The sheet that is printed first and then cut: `ink` and the targets, all in mm of the paper. */
export function printThenCutSheet(
  context: SheetContext,
  { paper, toPaper }: FrameOnPaper,
  ink: readonly InkMark[],
  targets: readonly Point[],
): Sheet {
  const { marks } = furniture(context, {
    kind: 'print-then-cut',
    id: 'print-then-cut',
    title: 'Print, then cut',
    advice: 'print at 100 %, lay it in the machine, and align the beam on all four targets',
    label: '1 of 1',
    page: 'page 1-1 of 1 x 1',
    paper,
  });
  return {
    kind: 'print-then-cut',
    id: 'print-then-cut',
    title: 'Print, then cut',
    paper,
    marks: [...ink, ...marks, ...targets.flatMap(targetMarks).map((mark) => moveMark(mark, toPaper))],
  };
}
