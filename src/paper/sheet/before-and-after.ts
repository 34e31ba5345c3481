import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import { type Box, boxOf, growBox, heightOf, widthOf } from '#base/geometry/box.ts';
import { add, distance, type Point, scale, subtract } from '#base/geometry/point.ts';
import { type PaperSize, turned } from '#base/units/paper.ts';
import type { Colour, InkMark } from '../drawing/mark.ts';
import { segment } from '../drawing/path.ts';
import { textLine } from '../type/lettering.ts';
import { bodyBold, bodyLetters, lineStep, quiet, smallLetters } from '../type/style.ts';
import { furniture, roomOn } from './furniture.ts';
import type { Sheet, SheetContext } from './sheet.ts';

/** Where pins stood and where they are to stand, in mm; pins of both lists go by the same index. */
export interface BeforeAndAfter {
  readonly stood: readonly Point[];
  readonly now: readonly Point[];
  /** Places where a pin is proposed. */
  readonly missing: readonly Point[];
  /** Index of pins that seem to belong to nothing. */
  readonly stray: readonly number[];
  /** Index of pins that may be none. */
  readonly doubtful: readonly number[];
}

/** A move shorter than this counts as none, mm. */
export const LEAST_MOVE = 0.005;

/**
 * One picture of what straightening proposes: a ring where each pin stood, a dot where it is to stand, a line for its
 * move drawn larger than it is so that it can be seen, and a shape of its own for pins proposed, stray and doubtful.
 */
export function beforeAndAfterSheet(context: SheetContext, paper: PaperSize, moves: BeforeAndAfter): Sheet {
  const content = growBox(boxOf([...moves.stood, ...moves.now, ...moves.missing]), 1);
  const lain =
    fitting(content, context, paper) >= fitting(content, context, turned(paper)) ? paper : turned(paper);
  const heading = {
    kind: 'before-and-after',
    id: 'before-and-after',
    title: 'Before and after',
    advice: 'a picture to look at, not to prick from',
    label: '1 of 1',
    page: 'one page',
    paper: lain,
  } as const;
  const frame = furniture(context, heading);
  const factor = fitting(content, context, lain);
  const room = pictureRoom(frame.room);
  const toSheet: Affine = {
    a: factor,
    b: 0,
    c: 0,
    d: factor,
    e: (room.left + room.right) / 2 - ((content.left + content.right) / 2) * factor,
    f: (room.top + room.bottom) / 2 - ((content.top + content.bottom) / 2) * factor,
  };
  const magnify = magnification(moves);
  return {
    kind: heading.kind,
    id: heading.id,
    title: heading.title,
    paper: lain,
    marks: [
      ...frame.marks,
      ...key(context, moves, magnify, factor, { ...frame.room, top: room.bottom + 4 }),
      ...picture(moves, toSheet, magnify),
    ],
  };
}

const KEY_HEIGHT = 38;
const LARGEST = 1.5;

const colours = {
  stood: '#8a8a8a',
  now: '#000000',
  move: '#8a2f4b',
  missing: '#0072b2',
  stray: '#d55e00',
  doubtful: '#a3487d',
} as const satisfies Record<string, Colour>;

const pictureRoom = (room: Box): Box => ({ ...room, top: room.top + 2, bottom: room.bottom - KEY_HEIGHT });

function fitting(content: Box, context: SheetContext, paper: PaperSize): number {
  const room = pictureRoom(roomOn(context, paper));
  return Math.min(
    LARGEST,
    widthOf(room) / Math.max(1, widthOf(content)),
    heightOf(room) / Math.max(1, heightOf(content)),
  );
}

/** How much larger moves are drawn: a usual move becomes about 2 mm long, in a round number of times. */
function magnification({ stood, now }: BeforeAndAfter): number {
  const moved = stood.map((from, k) => distance(from, now[k]!)).filter((far) => far > LEAST_MOVE);
  moved.sort((one, other) => one - other);
  const usual = moved[Math.floor(moved.length * 0.9)];
  return usual === undefined ? 1 : ([50, 20, 10, 5, 2].find((times) => times * usual <= 2.5) ?? 1);
}

function picture(moves: BeforeAndAfter, toSheet: Affine, magnify: number): InkMark[] {
  const size = Math.min(0.7, 0.55 * toSheet.a);
  const marks: InkMark[] = [];
  moves.stood.forEach((from, k) => {
    const step = scale(subtract(moves.now[k]!, from), magnify);
    const [at, tip] = [applyAffine(toSheet, from), applyAffine(toSheet, add(from, step))];
    marks.push(sign('stood', at, size));
    if (distance(from, moves.now[k]!) > LEAST_MOVE) {
      marks.push({ kind: 'stroke', role: 'note', path: segment(at, tip), width: 0.2, colour: colours.move });
    }
    marks.push(sign('now', tip, size));
  });
  for (const place of moves.missing) marks.push(sign('missing', applyAffine(toSheet, place), size));
  for (const k of moves.stray) marks.push(sign('stray', applyAffine(toSheet, moves.now[k]!), size));
  for (const k of moves.doubtful) marks.push(sign('doubtful', applyAffine(toSheet, moves.now[k]!), size));
  return marks;
}

/** The shapes differ as well as the colours. */
function sign(kind: 'stood' | 'now' | 'missing' | 'stray' | 'doubtful', at: Point, size: number): InkMark {
  const colour = colours[kind];
  switch (kind) {
    case 'stood':
      return { kind: 'ring', role: 'note', at, diameter: size * 1.9, width: 0.15, colour };
    case 'now':
      return { kind: 'disc', role: 'note', at, diameter: size * 0.8, colour };
    case 'missing':
      return { kind: 'cross', role: 'note', at, size: size * 4, width: 0.35, turn: 0, colour };
    case 'stray':
      return { kind: 'cross', role: 'note', at, size: size * 4, width: 0.35, turn: Math.PI / 4, colour };
    case 'doubtful':
      return { kind: 'ring', role: 'note', at, diameter: size * 4.4, width: 0.3, colour };
  }
}

function key(
  { typeface }: SheetContext,
  moves: BeforeAndAfter,
  magnify: number,
  factor: number,
  room: Box,
): InkMark[] {
  const far = moves.stood.map((from, k) => distance(from, moves.now[k]!));
  const moved = far.filter((one) => one > LEAST_MOVE);
  const largest = moved.reduce((most, one) => Math.max(most, one), 0);
  const entries = [
    ['stood', 'where a pin stood', `${moves.stood.length}`],
    ['now', 'where it is to stand', `${moved.length} moved, at most ${largest.toFixed(2)} mm`],
    ['missing', 'a pin proposed', `${moves.missing.length}`],
    ['stray', 'a pin that seems stray', `${moves.stray.length}`],
    ['doubtful', 'a mark that may be no pin', `${moves.doubtful.length}`],
  ] as const;
  const step = lineStep(bodyLetters);
  const scaleWords = `Moves are drawn ${magnify === 1 ? 'as long as they are' : `${magnify} times as long as they are`}; the picture is at ${(factor * 100).toFixed(0)} %.`;
  return [
    ...entries.flatMap(([kind, words, count], k) => {
      const y = room.top + (k + 1) * step;
      return [
        sign(kind, { x: room.left + 2.5, y: y - 1.3 }, 0.7),
        textLine(typeface, words, bodyLetters, { at: { x: room.left + 8, y } }),
        textLine(typeface, count, bodyBold, { at: { x: room.left + 66, y } }),
      ];
    }),
    textLine(
      typeface,
      scaleWords,
      { ...smallLetters, colour: quiet },
      { at: { x: room.left, y: room.top + 6 * step } },
    ),
  ];
}
