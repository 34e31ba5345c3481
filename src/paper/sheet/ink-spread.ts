import type { Point } from '#base/geometry/point.ts';
import type { InkMark } from '../drawing/mark.ts';
import { rectangle } from '../drawing/path.ts';
import { textLine } from '../type/lettering.ts';
import { ink, LEAST_LINE, smallLetters } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';
import type { Block } from './flow.ts';

/** Diameters of the dots and rings, mm. */
const SIZES = [0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.2] as const;

/** White between two black bars, mm: ink that spreads by as much closes it. */
const GAPS = [0.1, 0.15, 0.2, 0.25, 0.3, 0.6, 0.9, 1.2] as const;

/** Dots, rings and gaps that show how much wider the ink makes a mark. */
export function spreadStrip(typeface: Typeface, width: number): Block {
  const column = (width - 20) / SIZES.length;
  return {
    height: 28,
    draw: ({ x, y }) => {
      const middle = (k: number): number => x + 20 + (k + 0.5) * column;
      const row = (words: string, down: number): InkMark =>
        textLine(typeface, words, smallLetters, { at: { x, y: y + down + 1.1 } });
      return [
        row('mm', 1),
        row('dots', 6),
        row('rings', 11),
        row('gaps', 19),
        row('mm', 26),
        ...SIZES.flatMap((size, k) => [
          number(typeface, size, { x: middle(k), y: y + 2.1 }),
          ...dotAndRing(size, { x: middle(k), y }),
        ]),
        ...GAPS.flatMap((gap, k) => [
          ...bars(gap, { x: middle(k), y: y + 16 }),
          number(typeface, gap, { x: middle(k), y: y + 27.1 }),
        ]),
      ];
    },
  };
}

const number = (typeface: Typeface, value: number, at: Point): InkMark =>
  textLine(typeface, `${value}`, smallLetters, { at, align: 'middle' });

/** A ring too small to have a middle is left out. */
const dotAndRing = (size: number, { x, y }: Point): InkMark[] => [
  { kind: 'disc', role: 'guide', at: { x, y: y + 6 }, diameter: size, colour: ink },
  ...(size > 2 * LEAST_LINE
    ? [
        {
          kind: 'ring',
          role: 'guide',
          at: { x, y: y + 11 },
          diameter: size,
          width: LEAST_LINE,
          colour: ink,
        } as const,
      ]
    : []),
];

const bars = (gap: number, { x, y }: Point): InkMark[] =>
  [
    { left: x - gap / 2 - 2, right: x - gap / 2 },
    { left: x + gap / 2, right: x + gap / 2 + 2 },
  ].map((bar) => ({
    kind: 'fill',
    role: 'guide',
    path: rectangle({ ...bar, top: y, bottom: y + 7 }),
    colour: ink,
  }));
