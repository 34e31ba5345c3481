import type { PaperSize } from '#base/units/paper.ts';
import { parseLength } from '#base/units/parse-length.ts';
import type { CutFormat, CutWish } from '#jobs/cut/wish.ts';
import { type CutLayer, cutLayers } from '#paper/cut/drawing.ts';
import type { Extent } from '#paper/cut/options.ts';
import { badOption } from './bad-option.ts';
import { lengthIn } from './length.ts';
import { needed } from './needed.ts';
import { type RouteFlags, spreadOf } from './route.ts';

/** The flags of `cut`. */
export interface CutFlags extends Pick<RouteFlags, 'spread'> {
  readonly output?: string;
  readonly json?: true;
  readonly preset?: string;
  readonly hole?: number;
  readonly pin?: number;
  readonly kerf?: number;
  readonly cardThickness?: number;
  readonly card?: true | string;
  readonly tabs?: number;
  readonly tabWidth?: number;
  readonly film?: true;
  readonly engrave?: true;
  readonly ref?: true;
  readonly mirror?: true;
  readonly only?: readonly CutLayer[];
  readonly bed?: Extent;
  readonly split?: true;
  readonly coupon?: true;
  readonly printThenCut?: string;
  readonly paper?: PaperSize;
  readonly holes?: 'circle' | 'polyline' | 'arcs';
  readonly stroke?: number;
  readonly release?: 'R12' | 'R2000';
  readonly inch?: true;
  readonly feed?: number;
  readonly power?: number;
  readonly mostPower?: number;
  readonly straight?: true;
  readonly pierce?: number;
  readonly sized?: true;
}

/** The kind of file that a name's ending asks for. */
export function formatOf(output: string): CutFormat {
  const ending = /\.(dxf|svg|gcode|nc|ngc|gc)$/i.exec(output)?.[1]?.toLowerCase();
  if (ending === undefined) badOption('-o', output, 'a file that ends in .dxf, .svg or .gcode');
  return ending === 'dxf' || ending === 'svg' ? ending : 'gcode';
}

/** `--kerf 0.15`, and 0 where the shop compensates. */
export function kerf(text: string): number {
  const parsed = parseLength(text);
  return parsed.ok && parsed.value >= 0
    ? parsed.value
    : badOption('--kerf', text, 'the width that the beam takes away, such as 0.15mm, or 0');
}

/** `--bed 600x400`: width and height, mm. */
export function bed(text: string): Extent {
  const [width, height, ...more] = text.split(/x|\u00d7|\*/i).map(lengthIn);
  if (!width || !height || more.length > 0)
    return badOption('--bed', text, 'its width and height, such as 600x400');
  return { width, height };
}

/** `--only holes,outline`. */
export const only = (text: string): CutLayer[] =>
  text.split(',').map((word) => {
    const layer = cutLayers.find((name) => name === word.trim().toUpperCase());
    return layer ?? badOption('--only', text, `some of ${cutLayers.join(', ').toLowerCase()}`);
  });

/** A whole or decimal number above nought. */
export const numberAbove =
  (option: string, wanted: string) =>
  (text: string): number => {
    const number = /^\d+([.,]\d+)?$/.test(text.trim()) ? Number(text.replace(',', '.')) : Number.NaN;
    return number > 0 && number <= 1e5 ? number : badOption(option, text, wanted);
  };

/** A whole number above nought. */
export const wholeAbove =
  (option: string, wanted: string) =>
  (text: string): number =>
    /^[1-9]\d{0,4}$/.test(text.trim()) ? Number(text) : badOption(option, text, wanted);

/** What the flags wish for. */
export function cutWishOf(flags: CutFlags, format: CutFormat): Omit<CutWish, 'typeface' | 'preset'> {
  if (flags.printThenCut !== undefined) {
    if (!/\.pdf$/i.test(flags.printThenCut))
      badOption('--print-then-cut', flags.printThenCut, 'a file that ends in .pdf');
    if (flags.mirror)
      badOption('--mirror', '', 'it only without --print-then-cut: the print shows the front');
    if (flags.split) badOption('--split', '', 'it only without --print-then-cut: one sheet is printed');
  }
  if (flags.tabs !== undefined && flags.card === undefined)
    badOption('--tabs', `${flags.tabs}`, 'it only with --card, whose outline they hold');
  const { hole, pin, cardThickness, only: layers, bed: size, holes, stroke, release } = flags;
  const { feed, power, mostPower, pierce } = flags;
  return {
    format,
    ...(hole !== undefined && { hole }),
    ...(pin !== undefined && { pin }),
    ...(flags.kerf !== undefined && { kerf: flags.kerf }),
    ...(cardThickness !== undefined && { cardThickness }),
    ...(flags.card !== undefined && { card: cardOf(flags.card, flags) }),
    film: flags.film ?? false,
    engrave: flags.engrave ?? false,
    ref: flags.ref ?? false,
    mirror: flags.mirror ?? false,
    ...(layers && { only: layers }),
    ...(flags.spread !== undefined && { spread: spreadOf(flags) }),
    ...(size && { bed: size }),
    split: flags.split ?? false,
    coupon: flags.coupon ?? false,
    ...(flags.printThenCut !== undefined && {
      printOn: needed('--paper', flags.paper, 'the paper that is printed first, such as A4 or Letter'),
    }),
    ...(holes && { holes }),
    ...(stroke !== undefined && { stroke }),
    ...(release && { release }),
    ...(flags.inch && { unit: 'in' }),
    ...(feed !== undefined && { feed }),
    ...(power !== undefined && { power }),
    ...(mostPower !== undefined && { mostPower }),
    ...(flags.straight && { straight: true }),
    ...(pierce !== undefined && { pierce }),
  };
}

function cardOf(given: true | string, { tabs, tabWidth }: CutFlags): NonNullable<CutWish['card']> {
  const margin =
    given === true
      ? USUAL_MARGIN
      : (lengthIn(given) ??
        badOption('--card', given, 'the margin round the holes, such as 10mm, or nothing behind it'));
  return tabs === undefined ? { margin } : { margin, tabs: { count: tabs, width: tabWidth ?? USUAL_TAB } };
}

const USUAL_MARGIN = 10;
const USUAL_TAB = 1;
