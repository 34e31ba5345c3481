import { noFilm } from '#base/colour/film.ts';
import { type Box, growBox, heightOf, joinBoxes, widthOf } from '#base/geometry/box.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfMarks } from '../drawing/box.ts';
import type { Image, InkMark } from '../drawing/mark.ts';
import { plainDots } from '../ink/holes.ts';
import { drawPattern, type PatternInk } from '../ink/pattern-ink.ts';
import { films } from '../ink/tints.ts';
import type { PaperNote } from '../note.ts';
import { type Layout, layOut } from '../tile/layout.ts';
import { chooseCutting, cuttingMarks } from './cutting.ts';
import { roomOn } from './furniture.ts';
import {
  LEAST_ROOM,
  MOST_SHEETS,
  optionOutOfRange,
  type PrintOptions,
  type PrintTrouble,
  patternUnprintable,
} from './options.ts';
import type { Edition } from './pattern-page.ts';
import { type SheetContext, sheetContext } from './sheet.ts';

/** How a pattern lies on its sheets, before any is drawn. */
export interface SheetPlan {
  readonly context: SheetContext;
  readonly content: Box;
  readonly layout: Layout;
  /** Each is printed on every tile of the layout. */
  readonly editions: readonly Edition[];
  readonly notes: readonly PaperNote[];
}

/** Plans the sheets of one way of pricking, or says why there can be none. */
export function planSheets(pattern: Pattern, options: PrintOptions): Result<SheetPlan, PrintTrouble> {
  const trouble = patternUnprintable(pattern) ?? optionOutOfRange(options);
  if (trouble) return failed(trouble);
  const context = sheetContext(pattern.about, options);
  const room = roomOn(context, options.paper);
  if (widthOf(room) < LEAST_ROOM.width || heightOf(room) < LEAST_ROOM.height) {
    const { name, width, height } = options.paper;
    return failed({ kind: 'print-paper-too-small', paper: name, width, height });
  }
  const ink = drawPattern(pattern, {
    typeface: options.typeface,
    hole: { ...plainDots, ...options.hole },
    spread: options.inkSpread ?? 0,
    film: options.way === 'film' ? films[options.film ?? 'blue'] : noFilm,
    line: options.way === 'film' ? 0.25 : 0.2,
  });
  const plan = planOf(pattern, options, context, ink);
  const { layout } = plan;
  if (layout.tiles.length > MOST_SHEETS) {
    return failed({ kind: 'print-too-many-sheets', sheets: layout.tiles.length, most: MOST_SHEETS });
  }
  return done({ context, ...plan, notes: notesOf(pattern, ink, layout) });
}

const OVERLAP = 15;

function planOf(
  pattern: Pattern,
  options: PrintOptions,
  context: SheetContext,
  ink: PatternInk,
): Omit<SheetPlan, 'context' | 'notes'> {
  const underlay: Image[] = options.picture ? [{ kind: 'image', role: 'picture', ...options.picture }] : [];
  const drawn: readonly InkMark[] = underlay.length ? underlay : [...ink.tints, ...ink.markings];
  const inked = joinBoxes(ink.box, boxOfMarks(drawn));
  const shared = {
    places: pattern.pins,
    holes: ink.holes,
    holeReach: (options.hole?.diameter ?? plainDots.diameter) / 2,
  };
  const key = underlay.length ? [] : ink.key;
  const lay = (content: Box): Layout =>
    layOut(content, pattern.pins, options.paper, options.overlap ?? OVERLAP, (paper: PaperSize) =>
      roomOn(context, paper),
    );
  if (options.way === 'through') {
    const content = growBox(inked, 1);
    return {
      content,
      layout: lay(content),
      editions: [
        {
          ...shared,
          kind: 'dots',
          title: 'Dots to prick through',
          advice: 'fix over the card and prick every dot, needle upright',
          others: [],
          key: [],
        },
        {
          ...shared,
          kind: 'marking-guide',
          title: 'Marking guide',
          advice: 'draw these on the pricked card: pencil first, then fine pen',
          others: drawn,
          key,
        },
      ],
    };
  }
  const cutting = chooseCutting(inked, (content) => lay(content).tiles.length);
  return {
    content: cutting.film,
    layout: lay(growBox(cutting.film, 0.5)),
    editions: [
      {
        ...shared,
        kind: 'complete',
        title: 'Complete sheet for under film',
        advice: 'stick on card, film over it, then prick',
        others: [...drawn, ...cuttingMarks(options.typeface, cutting, pattern.pins)],
        key,
      },
    ],
  };
}

const notesOf = (pattern: Pattern, ink: PatternInk, { nearCuts }: Layout): PaperNote[] => [
  ...(pattern.scale.from === 'none' ? [{ kind: 'scale-not-proved' } as const] : []),
  ...ink.notes,
  ...(nearCuts.length
    ? [{ kind: 'seam-near-holes', pins: nearCuts.map((k) => pattern.pins[k]!.id) } as const]
    : []),
];
