import { heightOf, widthOf } from '#base/geometry/box.ts';
import { add, type Point, scale, subtract, unit } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { CalibrationLengths } from '../calibrate/factors.ts';
import type { InkMark } from '../drawing/mark.ts';
import { polyline, segment } from '../drawing/path.ts';
import { textLine } from '../type/lettering.ts';
import { accent, bodyBold, ink, smallLetters } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';
import { type Block, flow, gap, heading, item } from './flow.ts';
import { furniture, roomOn } from './furniture.ts';
import { spreadStrip } from './ink-spread.ts';
import type { PrintTrouble } from './options.ts';
import type { Sheet, SheetContext } from './sheet.ts';

/** Baselines shorter than this measure a printer too roughly, mm. */
const LEAST = { across: 150, down: 220 };

/** What the lines on the calibration sheet of this paper measure; undefined where the paper is too small for one. */
export function calibrationLengths(
  context: SheetContext,
  paper: PaperSize,
): Required<CalibrationLengths> | undefined {
  const room = roomOn(context, paper);
  const across = Math.floor((widthOf(room) - 8) / 10) * 10;
  const down = Math.floor((heightOf(room) - 7) / 10) * 10;
  if (across < LEAST.across || down < LEAST.down) return undefined;
  const diagonal = Math.hypot(across, down);
  return { across, down, falling: diagonal, rising: diagonal };
}

/** One sheet to measure a printer by: long baselines from line to line, both diagonals, and how the ink spreads. */
export function calibrationSheet(context: SheetContext, paper: PaperSize): Result<Sheet, PrintTrouble> {
  const lengths = calibrationLengths(context, paper);
  if (!lengths) {
    return failed({
      kind: 'print-paper-too-small',
      paper: paper.name,
      width: paper.width,
      height: paper.height,
    });
  }
  const { typeface } = context;
  const about = {
    kind: 'calibration',
    id: 'calibration',
    title: 'Calibration sheet',
    advice: 'print at 100 % with the correction off, then measure',
    label: '1 of 1',
    page: 'one page',
    paper,
  } as const;
  const frame = furniture(context, about);
  const left = frame.room.left + (widthOf(frame.room) - lengths.across) / 2;
  const top = frame.room.top + 4.5;
  const corner = (x: number, y: number): Point => ({
    x: left + x * lengths.across,
    y: top + y * lengths.down,
  });
  const inner = {
    left: left + 22,
    top: top + 14,
    right: left + lengths.across - 22,
    bottom: top + lengths.down - 14,
  };
  const marks: InkMark[] = [
    ...frame.marks,
    line([corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)], true),
    ...[
      [corner(0, 0), corner(1, 1)],
      [corner(1, 1), corner(0, 0)],
      [corner(1, 0), corner(0, 1)],
      [corner(0, 1), corner(1, 0)],
    ].map(([from, to]) => line([from!, add(from!, scale(unit(subtract(to!, from!)), DIAGONAL_END))])),
    ...names(typeface, corner, lengths),
    ...flow(instructions(context, lengths, widthOf(inner)), inner)[0]!,
  ];
  return done({ kind: about.kind, id: about.id, title: about.title, paper, marks });
}

const DIAGONAL_END = 18;

const line = (points: readonly Point[], closed = false): InkMark => ({
  kind: 'stroke',
  role: 'guide',
  path: polyline(points, closed),
  width: 0.2,
  colour: ink,
});

/** What each line is called, and the arrows to tick for the edge that left the printer first. */
function names(
  typeface: Typeface,
  corner: (x: number, y: number) => Point,
  lengths: Required<CalibrationLengths>,
): InkMark[] {
  const label = (text: string, at: Point, turn = 0): InkMark =>
    textLine(typeface, text, bodyBold, { at, align: 'middle', turn, role: 'guide' });
  const top = corner(0.5, 0);
  const leftEdge = corner(0, 0.5);
  return [
    label(`A: ${lengths.across} mm across`, { x: top.x, y: top.y + 6 }),
    label(`B: ${lengths.down} mm down`, { x: leftEdge.x + 3, y: leftEdge.y }, Math.PI / 2),
    label('C', add(corner(0, 0), { x: 15, y: 12 })),
    label('C', add(corner(1, 1), { x: -15, y: -9 })),
    label('D', add(corner(1, 0), { x: -15, y: 12 })),
    label('D', add(corner(0, 1), { x: 15, y: -9 })),
    ...arrow(typeface, add(corner(0.5, 0), { x: 0, y: -4 }), 'up'),
    ...arrow(typeface, add(corner(0.5, 1), { x: 0, y: -1.2 }), 'down'),
  ];
}

/** A small arrow toward an edge of the paper with a box to tick. */
function arrow(typeface: Typeface, { x, y }: Point, way: 'up' | 'down'): InkMark[] {
  const [tip, tail] = way === 'up' ? [y, y + 3] : [y, y - 3];
  const from = x + 36;
  const box = [
    { x: from + 3, y: Math.min(tip, tail) },
    { x: from + 6, y: Math.min(tip, tail) },
    { x: from + 6, y: Math.max(tip, tail) },
    { x: from + 3, y: Math.max(tip, tail) },
  ];
  const head = way === 'up' ? 1.3 : -1.3;
  return [
    {
      kind: 'stroke',
      role: 'guide',
      path: segment({ x: from, y: tail }, { x: from, y: tip }),
      width: 0.3,
      colour: accent,
    },
    {
      kind: 'fill',
      role: 'guide',
      path: polyline(
        [
          { x: from, y: tip },
          { x: from - 0.8, y: tip + head },
          { x: from + 0.8, y: tip + head },
        ],
        true,
      ),
      colour: accent,
    },
    { kind: 'stroke', role: 'guide', path: polyline(box, true), width: 0.2, colour: ink },
    textLine(typeface, 'left the printer first', smallLetters, {
      at: { x: from - 2, y: Math.max(tip, tail) - 0.3 },
      align: 'right',
      role: 'guide',
    }),
  ];
}

function instructions(
  { typeface }: SheetContext,
  lengths: Required<CalibrationLengths>,
  width: number,
): Block[] {
  const diagonal = lengths.falling.toFixed(1);
  const steps = [
    'Use one good ruler for everything, and measure from line to line, never from the edge of the paper: left edge of a line to left edge of the other.',
    `Measure A across the top (it should be ${lengths.across} mm) and B down the left side (${lengths.down} mm).`,
    `Measure the diagonals C (top left to bottom right) and D (bottom left to top right), both ${diagonal} mm. If they differ, the printer pulls the paper askew.`,
    'Tick the arrow of the edge that left the printer first. The correction belongs to the paper, so always feed it the same way round.',
    'Look at the strip below with a magnifier: which is the widest gap that has closed? That is how far your ink spreads.',
    'Type the readings in. Then print this sheet again with the correction on: both A and B must come out within 0.2 %.',
  ];
  return [
    heading(typeface, 'How to measure your printer'),
    ...steps.flatMap((step, k) => item(typeface, { number: `${k + 1}` }, step, width)),
    gap(4),
    spreadStrip(typeface, width),
    gap(6),
    heading(typeface, 'My readings'),
    ...[
      'A  ______________',
      'B  ______________',
      'C  ______________',
      'D  ______________',
      'widest closed gap  ______________',
    ].map(
      (words): Block => ({
        height: 9,
        draw: ({ x, y }) => [textLine(typeface, words, bodyBold, { at: { x, y: y + 5 } })],
      }),
    ),
  ];
}
