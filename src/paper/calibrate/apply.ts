import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import { type Box, boxOf } from '#base/geometry/box.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { InkMark } from '../drawing/mark.ts';
import { moveMark } from '../drawing/move.ts';
import { correctionMap, type PrinterCorrection } from './correction.ts';

/**
 * The marks of a page at the places that make this printer print them true: positions and rulers change, the sizes
 * of marks, strokes and letters do not.
 */
export function correctMarks(
  marks: readonly InkMark[],
  paper: PaperSize,
  correction: PrinterCorrection,
): readonly InkMark[] {
  if (correction.x === 1 && correction.y === 1 && correction.lean === 0) return marks;
  const map = correctionMap(correction, paper);
  // Marks that share a clip box must go on sharing it.
  const clips = new Map<Box, Box>();
  return marks.map((mark) => {
    const moved = moveMark(mark, map);
    if (!mark.clip) return moved;
    let clip = clips.get(mark.clip);
    if (!clip) {
      clip = moveBox(mark.clip, map);
      clips.set(mark.clip, clip);
    }
    return { ...moved, clip };
  });
}

const moveBox = ({ left, top, right, bottom }: Box, map: Affine): Box =>
  boxOf(
    [
      { x: left, y: top },
      { x: right, y: top },
      { x: right, y: bottom },
      { x: left, y: bottom },
    ].map((corner) => applyAffine(map, corner)),
  );
