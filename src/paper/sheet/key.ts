import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { InkMark, Text } from '../drawing/mark.ts';
import { type Path, rectangle, segment } from '../drawing/path.ts';
import type { KeyEntry } from '../ink/pattern-ink.ts';
import { textLine } from '../type/lettering.ts';
import { hairline, lineStep, smallLetters } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';

/** What tints and signs mean, in two lines of the sheet; entries that find no room there are counted at its end. */
export function keyMarks(typeface: Typeface, entries: readonly KeyEntry[], strip: Box): InkMark[] {
  const rows: { entry: KeyEntry; words: Text; x: number }[][] = [[]];
  let x = strip.left;
  for (const entry of entries) {
    const words = textLine(typeface, entry.words, smallLetters, { at: { x: 0, y: 0 } });
    const width = SIGN + BESIDE + words.width;
    if (x > strip.left && x + width > strip.right - COUNT) {
      rows.push([]);
      x = strip.left;
    }
    rows.at(-1)!.push({ entry, words, x });
    x += width + 4;
  }
  const shown = rows.slice(0, MOST_ROWS);
  const left = rows.slice(MOST_ROWS).flat().length;
  const step = lineStep(smallLetters) + 0.4;
  const baseline = (row: number): number => strip.bottom - 0.6 - (shown.length - 1 - row) * step;
  return [
    ...shown.flatMap((row, k) =>
      row.flatMap(({ entry, words, x }) => [
        ...sign(entry, { x, y: baseline(k) - 1.1 }),
        { ...words, at: { x: x + SIGN + BESIDE, y: baseline(k) } },
      ]),
    ),
    ...(left
      ? [
          textLine(typeface, `+ ${left}`, smallLetters, {
            at: { x: strip.right, y: baseline(1) },
            align: 'right',
          }),
        ]
      : []),
  ];
}

const MOST_ROWS = 2;
/** Room at the end of a row for the number of entries left out. */
const COUNT = 8;
const BESIDE = 1.4;
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
