import type { Affine } from '#base/geometry/affine.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { PrickingOrder } from '#pattern/order.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Picture } from '../drawing/mark.ts';
import type { HoleStyle } from '../ink/holes.ts';
import type { FilmName } from '../ink/tints.ts';
import type { Typeface } from '../type/typeface.ts';
import type { Margins } from './sheet.ts';

/** How a pattern is to be printed. Only the first four must be said; everything else has a sound default. */
export interface PrintOptions {
  readonly typeface: Typeface;
  readonly way: 'through' | 'film';
  readonly paper: PaperSize;
  /** Names this state of the pattern on every sheet. */
  readonly revision: string;
  /** As it shall be printed; none is printed where it is absent. */
  readonly date?: string;
  /** 5 to 20 mm each; 10 mm where absent. */
  readonly margins?: Partial<Margins>;
  /** What neighbouring sheets share, 5 to 50 mm; 15 mm where absent. */
  readonly overlap?: number;
  readonly hole?: Partial<HoleStyle>;
  /** How much wider the printer's ink makes a dot, 0 to 0.3 mm. */
  readonly inkSpread?: number;
  /** The film that will be stuck over the sheet; blue where absent. */
  readonly film?: FilmName;
  /** In which order to prick; no guide is made where it is absent. */
  readonly order?: PrickingOrder;
  /** The paper's own picture, to lie under exact dots in place of drawn markings and tints. */
  readonly picture?: { readonly picture: Picture; readonly place: Affine };
  /** Only these sheets of the pattern, by name ('A2'); their labels and the map stay as they are. */
  readonly only?: readonly string[];
  /** The factors that the PDF writer will correct the printer with, to be named on every sheet. */
  readonly correction?: { readonly x: number; readonly y: number };
}

/** Why a pattern cannot be printed as asked. */
export type PrintTrouble =
  | { readonly kind: 'print-scale-unknown' }
  | { readonly kind: 'print-nothing' }
  | {
      readonly kind: 'print-paper-too-small';
      readonly paper: string;
      readonly width: number;
      readonly height: number;
    }
  | { readonly kind: 'print-too-many-sheets'; readonly sheets: number; readonly most: number }
  | {
      readonly kind: 'print-option';
      readonly option: 'margin' | 'overlap' | 'hole' | 'ink-spread';
      readonly value: number;
      readonly least: number;
      readonly most: number;
    }
  | { readonly kind: 'print-no-such-sheet'; readonly sheet: string; readonly sheets: readonly string[] };

/** More sheets than this are a mistake in the pattern's size, not a wish. */
export const MOST_SHEETS = 400;

/** The smallest room for a pattern beside both rulers, mm. */
export const LEAST_ROOM = { width: 106, height: 106 };

/** The first number in the options that is out of its range. */
export function optionOutOfRange({
  margins,
  overlap,
  hole,
  inkSpread,
}: PrintOptions): PrintTrouble | undefined {
  const checks = [
    ...Object.values(margins ?? {}).map((value) => ['margin', value, 5, 20] as const),
    ['overlap', overlap ?? 15, 5, 50] as const,
    ['hole', hole?.diameter ?? 0.6, 0.25, 5] as const,
    ['ink-spread', inkSpread ?? 0, 0, 0.3] as const,
  ];
  const wrong = checks.find(([, value, least, most]) => !(value >= least && value <= most));
  if (!wrong) return undefined;
  const [option, value, least, most] = wrong;
  return { kind: 'print-option', option, value, least, most };
}

/** Why this pattern can be printed on no paper. */
export function patternUnprintable(pattern: Pattern): PrintTrouble | undefined {
  if (pattern.unit === 'px') return { kind: 'print-scale-unknown' };
  if (pattern.pins.length + pattern.marks.length + pattern.areas.length === 0)
    return { kind: 'print-nothing' };
  return undefined;
}
