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
import type { Typeface } from '../type/typeface.ts';
import { coverPages } from './cover.ts';
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
import { type Edition, patternPages } from './pattern-page.ts';
import { guidePages } from './pricking-guide.ts';
import { type Sheet, type SheetContext, sheetContext } from './sheet.ts';

export interface Printed {
  readonly sheets: readonly Sheet[];
  readonly notes: readonly PaperNote[];
}

/** All sheets of one way of pricking, in the order in which they are used. */
export function printSheets(pattern: Pattern, options: PrintOptions): Result<Printed, PrintTrouble> {
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
  if (plan.layout.tiles.length > MOST_SHEETS) {
    return failed({ kind: 'print-too-many-sheets', sheets: plan.layout.tiles.length, most: MOST_SHEETS });
  }
  const names = plan.layout.tiles.map(({ name }) => name);
  const stranger = options.only?.find((name) => !names.includes(name.toUpperCase()));
  if (stranger !== undefined) {
    return failed({ kind: 'print-no-such-sheet', sheet: stranger, sheets: names });
  }
  const sheets = chosen(sheetsOf(pattern, options, context, plan), options.only);
  return done({ sheets, notes: notesOf(pattern, ink, plan.layout, sheets, options.typeface) });
}

interface Plan {
  readonly content: Box;
  readonly layout: Layout;
  readonly editions: readonly Edition[];
}

const OVERLAP = 15;

function planOf(pattern: Pattern, options: PrintOptions, context: SheetContext, ink: PatternInk): Plan {
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

function sheetsOf(pattern: Pattern, options: PrintOptions, context: SheetContext, plan: Plan): Sheet[] {
  const { layout, editions, content } = plan;
  const covers = layout.tiles.length > 1 ? coverPages(context, layout, content, pattern.pins) : [];
  const before = covers.length + editions.length * layout.tiles.length;
  const guides = options.order ? guidePages(context, pattern, options.order, options.paper, options.way) : [];
  const total = before + guides.length;
  return [
    ...covers.map((page, k) => page(k + 1, total)),
    ...editions.flatMap((edition, k) =>
      patternPages(context, edition, layout, covers.length + k * layout.tiles.length + 1, total),
    ),
    ...guides.map((page, k) => page(before + k + 1, total)),
  ];
}

/** The sheets asked for by name, with the cover that maps them; all of them where none is named. */
function chosen(sheets: readonly Sheet[], only: readonly string[] | undefined): Sheet[] {
  if (!only) return [...sheets];
  const wanted = only.map((name) => name.toLowerCase());
  return sheets.filter(({ kind, id }) => kind === 'cover' || wanted.includes(id.split('-').at(-1)!));
}

const notesOf = (
  pattern: Pattern,
  ink: PatternInk,
  layout: Layout,
  sheets: readonly Sheet[],
  typeface: Typeface,
): PaperNote[] => [
  ...missingLetters(sheets, typeface),
  ...(pattern.scale.from === 'none' ? [{ kind: 'scale-not-proved' } as const] : []),
  ...ink.notes,
  ...(layout.nearCuts.length
    ? [{ kind: 'seam-near-holes', pins: layout.nearCuts.map((k) => pattern.pins[k]!.id) } as const]
    : []),
];

function missingLetters(sheets: readonly Sheet[], typeface: Typeface): PaperNote[] {
  const letters = new Set<string>();
  for (const mark of sheets.flatMap(({ marks }) => marks)) {
    if (mark.kind === 'text')
      for (const letter of typeface.missingIn(mark.text, mark.weight)) letters.add(letter);
  }
  return letters.size ? [{ kind: 'letters-missing', letters: [...letters] }] : [];
}
