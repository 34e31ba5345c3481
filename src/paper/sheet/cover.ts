import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import { type Box, heightOf, widthOf } from '#base/geometry/box.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { mmToInches } from '#base/units/length.ts';
import type { InkMark } from '../drawing/mark.ts';
import { rectangle, segment } from '../drawing/path.ts';
import { registrationCrosses } from '../tile/crosses.ts';
import type { Layout } from '../tile/layout.ts';
import { textLine } from '../type/lettering.ts';
import { accent, guideLetters, hairline, headingLetters, ink, quiet, smallBold } from '../type/style.ts';
import { type Block, gap, heading, item, paragraph } from './flow.ts';
import { roomOn } from './furniture.ts';
import { readingSheets, type Unnumbered } from './reading-sheet.ts';
import type { SheetContext } from './sheet.ts';

/** What says how the pages of a large pattern become one, and how to check that they did: one sheet where it fits. */
export function coverPages(
  context: SheetContext,
  layout: Layout,
  content: Box,
  places: readonly Point[],
): Unnumbered[] {
  const { typeface } = context;
  const room = roomOn(context, layout.paper);
  const width = widthOf(room);
  const words: Block[] = [
    gap(5),
    heading(typeface, 'Assembled size'),
    ...paragraph(typeface, sizeWords(content), width),
    ...paragraph(
      typeface,
      `${layout.tiles.length} sheets of ${layout.paper.name}, ${layout.rows} down and ${layout.columns} across.`,
      width,
    ),
    gap(3),
    heading(typeface, 'Joining the sheets'),
    ...joiningSteps(layout).flatMap((step, k) => item(typeface, { number: `${k + 1}` }, step, width)),
    gap(2),
    heading(typeface, 'Check before you prick'),
    ...checkSteps(layout).flatMap((step) => item(typeface, { box: true }, step, width)),
  ];
  // The map takes what the words leave of one page, and no more than it needs.
  const left = heightOf(room) - 3 - words.reduce((sum, { height }) => sum + height, 0);
  const most = Math.max(LEAST_MAP, Math.min(0.46 * heightOf(room), left));
  return readingSheets(
    context,
    {
      kind: 'cover',
      title: 'How the sheets go together',
      advice: 'the map is small; every other sheet is true to scale',
      page: `cover of ${layout.rows} x ${layout.columns}`,
      paper: layout.paper,
    },
    [gap(3), map(context, layout, places, width, most), ...words],
  );
}

/** A map lower than this shows nothing, mm. */
const LEAST_MAP = 24;

/** More pins than this make no better map, only a slower page. */
const MOST_MAP_DOTS = 6000;

const sizeWords = (content: Box): string => {
  const inches = (mm: number): string => mmToInches(mm).toFixed(2);
  const [width, height] = [widthOf(content), heightOf(content)];
  return `${width.toFixed(1)} x ${height.toFixed(1)} mm (${inches(width)} x ${inches(height)} inches).`;
};

function joiningSteps({ rows, columns }: Layout): string[] {
  return [
    'Measure both rulers on one sheet. If either is not 100 mm, stop: print again at 100 %, with no fitting to the page.',
    ...(columns > 1
      ? [
          'Take the first row. Cut the left sheet between its ticks, lay it on the sheet to its right so that the crosses meet, and fix it with a little glue or tape. Go on to the right.',
        ]
      : []),
    ...(rows > 1 && columns > 1 ? ['Make up the other rows in the same way.'] : []),
    ...(rows > 1
      ? [
          `Then join ${columns > 1 ? 'the rows' : 'the sheets'} from the top: cut the upper one between its ticks and lay it on the one below, cross on cross.`,
        ]
      : []),
  ];
}

/** The outermost crosses are the corners of a rectangle, so that both diagonals are equally long. */
function checkSteps(layout: Layout): string[] {
  const at = (name: string): Point => registrationCrosses(layout).find((cross) => cross.name === name)!.at;
  const mm = distance(at('P'), at('R'));
  return [
    `From cross P to R, and from Q to S: each ${mm.toFixed(1)} mm (${mmToInches(mm).toFixed(2)} inches).`,
  ];
}

function map(
  context: SheetContext,
  layout: Layout,
  places: readonly Point[],
  width: number,
  most: number,
): Block {
  const first = layout.tiles[0]!.window;
  const last = layout.tiles.at(-1)!.window;
  const whole = { left: first.left, top: first.top, right: last.right, bottom: last.bottom };
  const scale = Math.min((width - 12) / widthOf(whole), (most - 8) / heightOf(whole));
  const height = heightOf(whole) * scale + 8;
  return {
    height,
    draw: (at) => {
      const toMap: Affine = {
        a: scale,
        b: 0,
        c: 0,
        d: scale,
        e: at.x + (width - widthOf(whole) * scale) / 2 - whole.left * scale,
        f: at.y + 4 - whole.top * scale,
      };
      return [
        ...mapDots(places, toMap),
        ...mapTiles(context, layout, places, whole, toMap),
        ...mapCrosses(context, layout, toMap),
      ];
    },
  };
}

function mapDots(places: readonly Point[], toMap: Affine): InkMark[] {
  const step = Math.ceil(places.length / MOST_MAP_DOTS);
  return places.flatMap((place, k) =>
    k % step === 0
      ? [
          {
            kind: 'disc',
            role: 'note',
            at: applyAffine(toMap, place),
            diameter: 0.35,
            colour: quiet,
          } as const,
        ]
      : [],
  );
}

/** Each sheet up to its cuts, with its name; a sheet without holes says that it can be left out. */
function mapTiles(
  { typeface }: SheetContext,
  layout: Layout,
  places: readonly Point[],
  whole: Box,
  toMap: Affine,
): InkMark[] {
  const xs = [whole.left, ...layout.cuts.across, whole.right];
  const ys = [whole.top, ...layout.cuts.down, whole.bottom];
  const line = (from: Point, to: Point): InkMark => ({
    kind: 'stroke',
    role: 'note',
    path: segment(applyAffine(toMap, from), applyAffine(toMap, to)),
    width: 0.25,
    colour: accent,
  });
  const corner = (x: number, y: number): Point => applyAffine(toMap, { x, y });
  const [from, to] = [corner(whole.left, whole.top), corner(whole.right, whole.bottom)];
  return [
    {
      kind: 'stroke',
      role: 'note',
      path: rectangle({ left: from.x, top: from.y, right: to.x, bottom: to.y }),
      width: 0.25,
      colour: hairline,
    },
    ...layout.cuts.across.map((x) => line({ x, y: whole.top }, { x, y: whole.bottom })),
    ...layout.cuts.down.map((y) => line({ x: whole.left, y }, { x: whole.right, y })),
    ...layout.tiles.flatMap(({ name, row, column, window }) => {
      const at = corner((xs[column]! + xs[column + 1]!) / 2, (ys[row]! + ys[row + 1]!) / 2);
      const blank = !places.some(
        ({ x, y }) => x >= window.left && x <= window.right && y >= window.top && y <= window.bottom,
      );
      return [
        { kind: 'disc', role: 'note', at, diameter: 11, colour: '#ffffff' } as const,
        textLine(typeface, name, headingLetters, { at: { x: at.x, y: at.y + 1.6 }, align: 'middle' }),
        ...(blank
          ? [textLine(typeface, 'blank, skip', smallBold, { at: { x: at.x, y: at.y + 9 }, align: 'middle' })]
          : []),
      ];
    }),
  ];
}

const mapCrosses = ({ typeface }: SheetContext, layout: Layout, toMap: Affine): InkMark[] =>
  registrationCrosses(layout).flatMap(({ at, name }) => {
    const place = applyAffine(toMap, at);
    const cross: InkMark = {
      kind: 'cross',
      role: 'note',
      at: place,
      size: 2.4,
      width: 0.2,
      turn: 0,
      colour: ink,
    };
    if (!name) return [cross];
    const left = name === 'P' || name === 'S';
    return [
      cross,
      textLine(typeface, name, guideLetters, {
        at: { x: place.x + (left ? -4.5 : 4.5), y: place.y + 1.1 },
        align: 'middle',
      }),
    ];
  });
