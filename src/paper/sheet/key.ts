import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { InkMark } from '../drawing/mark.ts';
import { type Path, rectangle, segment } from '../drawing/path.ts';
import type { KeyEntry } from '../ink/pattern-ink.ts';
import { textLine } from '../type/lettering.ts';
import { hairline, lineStep, smallLetters } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';

/** What tints and signs mean, in a strip of the sheet; entries that find no room there are counted at its end. */
export function keyMarks(typeface: Typeface, entries: readonly KeyEntry[], strip: Box): InkMark[] {
  const marks: InkMark[] = [];
  const step = lineStep(smallLetters) + 0.4;
  let [x, y] = [strip.left, strip.bottom - step - 0.6];
  for (const [index, entry] of entries.entries()) {
    const words = textLine(typeface, entry.words, smallLetters, { at: { x: 0, y: 0 } });
    const width = SIGN + 1.4 + words.width + 4;
    if (x > strip.left && x + width - 4 > strip.right) {
      x = strip.left;
      y += step;
    }
    if (y > strip.bottom) {
      const more = `and ${entries.length - index} more`;
      marks.push(
        textLine(typeface, more, smallLetters, { at: { x: strip.right, y: y - step }, align: 'right' }),
      );
      break;
    }
    marks.push(...sign(entry, { x, y: y - 1.1 }), { ...words, at: { x: x + SIGN + 1.4, y } });
    x += width;
  }
  return marks;
}

const SIGN = 6;

function sign({ sign: kind, colour }: KeyEntry, { x, y }: Point): InkMark[] {
  const line = segment({ x, y }, { x: x + SIGN, y });
  switch (kind) {
    case 'tint': {
      const path = rectangle({ left: x, top: y - 1.4, right: x + SIGN, bottom: y + 1.4 });
      return [
        { kind: 'fill', role: 'note', path, colour },
        { kind: 'stroke', role: 'note', path, colour: hairline, width: 0.15 },
      ];
    }
    case 'gimp':
      return [{ kind: 'stroke', role: 'note', path: line, width: 0.8, colour }];
    case 'plait':
      return [{ kind: 'stroke', role: 'note', path: line, width: 0.32, colour, dash: [1.6, 1] }];
    case 'picot':
      return [{ kind: 'stroke', role: 'note', path: loop(x + SIGN / 2, y), width: 0.2, colour }];
  }
}

/** The open loop of a picot: half a circle. */
const loop = (x: number, y: number): Path => [
  { step: 'move', to: { x, y: y - 1 } },
  { step: 'curve', first: { x: x + 1.33, y: y - 1 }, second: { x: x + 1.33, y: y + 1 }, to: { x, y: y + 1 } },
];
