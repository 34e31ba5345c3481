import type { Box } from '#base/geometry/box.ts';
import type { InkMark } from '../drawing/mark.ts';
import { segment } from '../drawing/path.ts';
import { shorten, textLine, wrapLines } from '../type/lettering.ts';
import {
  hairline,
  LEAST_LINE,
  lineStep,
  nameLetters,
  smallBold,
  smallLetters,
  titleLetters,
} from '../type/style.ts';
import { RULER_DEPTH, RULER_LENGTH, ruler } from './ruler.ts';
import { type SheetContext, type SheetHeading, safeBox } from './sheet.ts';

/** What stands on every sheet, and the box that it leaves for the sheet's own business. */
export interface Furniture {
  readonly marks: readonly InkMark[];
  readonly room: Box;
  /** A free strip beside the ruler across, for a key to signs and tints. */
  readonly key: Box;
}

/**
 * The room that sheets leave on a paper; the same for all sheets of a job, so that tiles can be laid out before
 * any is drawn.
 */
export function roomOn(context: SheetContext, paper: SheetHeading['paper']): Box {
  const safe = safeBox(paper, context.margins);
  return {
    left: safe.left + RULER_DEPTH + GAP,
    top: safe.top + HEADER,
    right: safe.right,
    bottom:
      safe.bottom - footerHeight(context, paper) - RULER_DEPTH - GAP - (hasKeyBeside(safe) ? 0 : KEY_HEIGHT),
  };
}

export function furniture(context: SheetContext, heading: SheetHeading): Furniture {
  const safe = safeBox(heading.paper, context.margins);
  const room = roomOn(context, heading.paper);
  const rulerAcross = { x: safe.left + 0.1, y: safe.bottom - footerHeight(context, heading.paper) - 1.6 };
  const rulerDown = { x: safe.left + 0.1, y: room.top + 1 };
  return {
    marks: [
      ...header(context, heading, safe),
      ...footer(context, heading, safe),
      ...ruler(context.typeface, rulerAcross, 'across'),
      ...ruler(context.typeface, rulerDown, 'down'),
    ],
    room,
    key: hasKeyBeside(safe)
      ? {
          left: rulerAcross.x + RULER_LENGTH + 6,
          top: rulerAcross.y - RULER_DEPTH,
          right: safe.right,
          bottom: rulerAcross.y + 0.6,
        }
      : {
          left: room.left,
          top: room.bottom,
          right: safe.right,
          bottom: room.bottom + KEY_HEIGHT - 1,
        },
  };
}

/** Who made the pattern, where it is from and what may be done with it, in the words that every sheet carries. */
export function originWords({ about }: SheetContext): string {
  return [
    about.maker ? `Made by ${about.maker}` : 'Maker not stated',
    about.source ? `Source: ${about.source}` : 'Source not stated',
    about.permission ? `Permission: ${about.permission}` : 'Permission not stated',
  ].join('  \u00b7  ');
}

/** Beside the ruler there is no room for words on small paper; the key then has a strip of its own above it. */
const hasKeyBeside = (safe: Box): boolean => safe.right - safe.left > RULER_LENGTH + 60;

const KEY_HEIGHT = 11;
const GAP = 1.6;
const HEADER = 14.5;
/** More lines than this would push the pattern off its own sheet; the whole text is in the attached pattern. */
const MOST_ORIGIN_LINES = 3;

function header({ typeface, about }: SheetContext, heading: SheetHeading, safe: Box): InkMark[] {
  const width = safe.right - safe.left;
  const label = textLine(typeface, heading.label, smallBold, {
    at: { x: safe.right, y: safe.top + 4.4 },
    align: 'right',
  });
  const name = shorten(
    typeface,
    about.name ?? 'Pattern without a name',
    nameLetters,
    width - label.width - 6,
  );
  const title = textLine(typeface, heading.title, titleLetters, { at: { x: safe.left, y: safe.top + 10 } });
  const advice = shorten(typeface, heading.advice, smallLetters, width - title.width - 8);
  const rule = safe.top + 12.2;
  return [
    textLine(typeface, name, nameLetters, { at: { x: safe.left, y: safe.top + 4.4 } }),
    label,
    title,
    textLine(typeface, advice, smallLetters, { at: { x: safe.right, y: safe.top + 10 }, align: 'right' }),
    {
      kind: 'stroke',
      role: 'note',
      path: segment({ x: safe.left + 0.1, y: rule }, { x: safe.right - 0.1, y: rule }),
      width: LEAST_LINE,
      colour: hairline,
    },
  ];
}

function footer(context: SheetContext, heading: SheetHeading, safe: Box): InkMark[] {
  const lines = footerLines(context, heading.paper, heading.page);
  const step = lineStep(smallLetters);
  return lines.map((line, index) =>
    textLine(context.typeface, line, smallLetters, {
      at: { x: safe.left, y: safe.bottom - 0.9 - (lines.length - 1 - index) * step },
    }),
  );
}

const footerHeight = (context: SheetContext, paper: SheetHeading['paper']): number =>
  footerLines(context, paper, 'page 10-10 of 10 x 10').length * lineStep(smallLetters) + 1;

function footerLines(context: SheetContext, paper: SheetHeading['paper'], page: string): string[] {
  const width = paper.width - context.margins.left - context.margins.right;
  const { typeface, correction, revision, date } = context;
  const facts = [
    `revision ${revision}`,
    ...(date ? [date] : []),
    paper.name + (paper.width > paper.height ? ' landscape' : ''),
    '100 %',
    `correction X ${correction.x.toFixed(4)} Y ${correction.y.toFixed(4)}`,
    page,
  ].join('  \u00b7  ');
  const origin = wrapLines(typeface, originWords(context), smallLetters, width);
  const shown = origin.slice(0, MOST_ORIGIN_LINES);
  if (origin.length > MOST_ORIGIN_LINES) {
    shown[MOST_ORIGIN_LINES - 1] = shorten(
      typeface,
      `${shown.at(-1)} ${origin[MOST_ORIGIN_LINES]}`,
      smallLetters,
      width,
    );
  }
  return [...shown, ...wrapLines(typeface, facts, smallLetters, width)];
}
