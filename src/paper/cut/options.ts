import type { Point } from '#base/geometry/point.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Typeface } from '../type/typeface.ts';
import type { CutLayer } from './drawing.ts';
import type { Tabs } from './tabs.ts';

/** A machine's bed or a sheet's size, mm. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** How a pattern is cut. Lengths in mm. */
export interface CutOptions {
  readonly typeface: Typeface;
  /** The finished hole. */
  readonly hole: number;
  /** What the beam takes away; 0 where the shop compensates for it. */
  readonly kerf: number;
  readonly cardThickness: number;
  /** In which order the holes are made, by index. */
  readonly order: (holes: readonly Point[]) => readonly number[];
  /** Cut the card out, with so much of it round the holes. */
  readonly card?: { readonly margin: number; readonly tabs?: Tabs };
  /** A film outline, a little larger than the card, in a file of its own. */
  readonly film: boolean;
  /** Engrave the markings. */
  readonly engrave: boolean;
  /** Targets in the corners, and the frame. */
  readonly ref: boolean;
  /** As seen from the back. */
  readonly mirror: boolean;
  /** These layers only, in the very same frame. */
  readonly only?: readonly CutLayer[];
}

/** Why a pattern cannot be cut as asked. */
export type CutTrouble =
  | { readonly kind: 'cut-scale-unknown' }
  | { readonly kind: 'cut-no-holes' }
  | { readonly kind: 'cut-nothing-left'; readonly layers: readonly CutLayer[] }
  | { readonly kind: 'cut-hole-over-spacing'; readonly hole: number; readonly spacing: number }
  | {
      readonly kind: 'cut-option';
      readonly option: CutNumber;
      readonly value: number;
      readonly least: number;
      readonly most: number;
    }
  | { readonly kind: 'cut-too-many-parts'; readonly parts: number; readonly most: number }
  | { readonly kind: 'cut-bed-too-small'; readonly least: number }
  | {
      readonly kind: 'cut-paper-too-small';
      readonly paper: string;
      readonly width: number;
      readonly height: number;
    };

export type CutNumber = 'hole' | 'kerf' | 'card-thickness' | 'card-margin' | 'tabs' | 'tab-width';

/** Something to know beside the files. */
export type CutNote =
  | { readonly kind: 'points-for-holes'; readonly hole: number; readonly kerf: number }
  | { readonly kind: 'holes-merged'; readonly count: number }
  | { readonly kind: 'holes-overlap'; readonly pairs: readonly (readonly [string, string])[] }
  | {
      readonly kind: 'thin-web';
      readonly pairs: number;
      readonly thinnest: number;
      readonly least: number;
      readonly pins: readonly [string, string];
    }
  | { readonly kind: 'webs-not-all'; readonly most: number }
  | { readonly kind: 'small-hole'; readonly hole: number; readonly least: number }
  | { readonly kind: 'over-bed'; readonly width: number; readonly height: number; readonly bed: Extent }
  | { readonly kind: 'card-inside-holes'; readonly margin: number }
  | { readonly kind: 'tabs-left-out'; readonly wanted: number; readonly made: number }
  | { readonly kind: 'engraved-by-middle' }
  | { readonly kind: 'lines-merged'; readonly count: number }
  | { readonly kind: 'pins-in-doubt'; readonly pins: readonly string[] }
  | { readonly kind: 'scale-unproved' };

/** The first number in the options that is out of its range. */
export function cutOptionOutOfRange(options: CutOptions): CutTrouble | undefined {
  const { hole, kerf, cardThickness, card } = options;
  const checks: (readonly [CutNumber, number, number, number])[] = [
    ['hole', hole, LEAST_HOLE, MOST_HOLE],
    ['kerf', kerf, 0, 2],
    ['card-thickness', cardThickness, 0.05, 10],
    ['card-margin', card?.margin ?? 1, 0, 1000],
    ['tabs', card?.tabs?.count ?? 1, 1, 100],
    ['tab-width', card?.tabs?.width ?? 1, 0.2, 20],
  ];
  const wrong = checks.find(([, value, least, most]) => !(value >= least && value <= most));
  if (!wrong) return undefined;
  const [option, value, least, most] = wrong;
  return { kind: 'cut-option', option, value, least, most };
}

/** Why this pattern cannot be cut at all. */
export function patternUncuttable({ unit, pins }: Pattern): CutTrouble | undefined {
  if (unit === 'px') return { kind: 'cut-scale-unknown' };
  return pins.length === 0 ? { kind: 'cut-no-holes' } : undefined;
}

const LEAST_HOLE = 0.05;
const MOST_HOLE = 10;

/** Whether a drawing is larger than a bed; a hair of rounding is not. */
export const isOverBed = ({ width, height }: Extent, bed: Extent): boolean =>
  width > bed.width + 1e-6 || height > bed.height + 1e-6;
