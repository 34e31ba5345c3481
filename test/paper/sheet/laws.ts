import { expect } from 'vitest';
import { type Box, boxHolds, growBox } from '#base/geometry/box.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { boxOfMark } from '#paper/drawing/box.ts';
import { type Sheet, safeBox } from '#paper/sheet/sheet.ts';
import { LEAST_LETTER, LEAST_LINE } from '#paper/type/style.ts';

/** What must hold on every sheet, whatever it is for. */
export function expectSheetLaws(sheet: Sheet, margin = 10): void {
  expect(faults(sheet, margin)).toEqual([]);
  const rulers = sheet.marks.filter((mark) => mark.kind === 'text' && mark.text.startsWith('measure me'));
  expect(rulers.length, sheet.id).toBeGreaterThanOrEqual(2);
}

function faults(sheet: Sheet, margin: number): string[] {
  const found: string[] = [];
  const safe = growBox(
    safeBox(sheet.paper, { top: margin, right: margin, bottom: margin, left: margin }),
    1e-6,
  );
  const holeBoxes = sheet.marks.filter(({ role }) => role === 'hole').map(boxOfMark);
  const index = new PointIndex(holeBoxes.map(middle));
  const reach = Math.max(0, ...holeBoxes.map(({ left, right }) => (right - left) / 2));
  for (const mark of sheet.marks) {
    const fault = (words: string): void => {
      found.push(`${sheet.id}: ${mark.kind} ${mark.kind === 'text' ? mark.text : mark.role} ${words}`);
    };
    const box = boxOfMark(mark);
    const corners = [
      { x: box.left, y: box.top },
      { x: box.right, y: box.bottom },
    ];
    if (!corners.every((corner) => boxHolds(safe, corner))) fault('reaches into the margin');
    if (mark.kind === 'text') {
      if (mark.size < LEAST_LETTER - 1e-9) fault('is too small');
      const near = index.inBox(growBox(box, reach));
      if (near.some((k) => overlaps(holeBoxes[k]!, box))) fault('lies over a hole');
    }
    if (mark.kind === 'stroke' || mark.kind === 'ring' || mark.kind === 'cross') {
      if (mark.width < LEAST_LINE - 1e-9) fault('is too thin');
    }
  }
  return found;
}

/** Words that lie on one another. Words clipped at a tile's edge are left out: they are whole on the neighbour. */
export function overlappingWords(sheet: Sheet): string[] {
  const words = sheet.marks.flatMap((mark) =>
    mark.kind === 'text' && !mark.clip ? [{ text: mark.text, box: growBox(boxOfMark(mark), -0.3) }] : [],
  );
  return words.flatMap((one, k) =>
    words
      .slice(k + 1)
      .flatMap((other) => (overlaps(one.box, other.box) ? [`${one.text} | ${other.text}`] : [])),
  );
}

const middle = ({ left, top, right, bottom }: Box) => ({ x: (left + right) / 2, y: (top + bottom) / 2 });

const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
