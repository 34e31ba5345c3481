import type { PaperSize } from '#base/units/paper.ts';
import type { CutFormat, CutWish } from '#jobs/cut/wish.ts';
import type { CutNames } from '#jobs/words/cut.ts';
import type { CutLayer } from '#paper/cut/drawing.ts';
import type { CuttingPreset } from '#paper/cut/preset.ts';

/** What a person chose for a machine's file; null where nothing was said. Lengths in mm. */
export interface CutChoices {
  readonly format: CutFormat;
  readonly preset: CuttingPreset | null;
  /** Whether the shop compensates for the kerf, as far as is known. */
  readonly shop: 'unknown' | 'compensates' | 'does-not';
  readonly kerf: number | null;
  readonly hole: number | null;
  readonly pin: number | null;
  readonly cardThickness: number | null;
  readonly cutCard: boolean;
  readonly cardMargin: number;
  readonly tabs: number | null;
  readonly tabWidth: number;
  readonly film: boolean;
  readonly engrave: boolean;
  readonly ref: boolean;
  readonly mirror: boolean;
  readonly only: 'all' | CutLayer;
  /** `preset`: as the preset has it, and the shortest way where there is none. */
  readonly order: 'preset' | 'shortest' | 'spread';
  readonly spread: number;
  readonly bedWidth: number | null;
  readonly bedHeight: number | null;
  readonly split: boolean;
  readonly coupon: boolean;
  readonly printFirst: boolean;
  readonly holes: 'preset' | 'circle' | 'polyline' | 'arcs';
  readonly stroke: number | null;
  readonly release: 'preset' | 'R12' | 'R2000';
  readonly unit: 'preset' | 'mm' | 'in';
  readonly feed: number | null;
  readonly power: number | null;
  readonly mostPower: number | null;
  readonly straight: boolean;
  readonly pierce: number | null;
  readonly sized: boolean;
}

export const usualCut: CutChoices = {
  format: 'dxf',
  preset: null,
  shop: 'unknown',
  kerf: null,
  hole: null,
  pin: null,
  cardThickness: null,
  cutCard: false,
  cardMargin: 10,
  tabs: null,
  tabWidth: 1,
  film: false,
  engrave: false,
  ref: false,
  mirror: false,
  only: 'all',
  order: 'preset',
  spread: 5,
  bedWidth: null,
  bedHeight: null,
  split: false,
  coupon: false,
  printFirst: false,
  holes: 'preset',
  stroke: null,
  release: 'preset',
  unit: 'preset',
  feed: null,
  power: null,
  mostPower: null,
  straight: false,
  pierce: null,
  sized: true,
};

/** The choices as the job takes them: what was not said is left to the preset, the pattern and the usual. */
export function cutWishOf(choices: CutChoices, paper: PaperSize | null): Omit<CutWish, 'typeface'> {
  const { format, shop, kerf, only, order, bedWidth, bedHeight, printFirst, tabs } = choices;
  const { hole, pin, cardThickness, stroke, feed, power, mostPower, pierce } = choices;
  const given = { hole, pin, cardThickness, stroke, feed, power, mostPower, pierce };
  return {
    format,
    ...(choices.preset && { preset: choices.preset }),
    ...Object.fromEntries(Object.entries(given).filter(([, value]) => value !== null)),
    ...(shop === 'compensates' && { kerf: 0 }),
    ...(shop === 'does-not' && kerf !== null && { kerf }),
    ...(choices.cutCard && {
      card: {
        margin: choices.cardMargin,
        ...(tabs !== null && { tabs: { count: tabs, width: choices.tabWidth } }),
      },
    }),
    ...{ film: choices.film, engrave: choices.engrave, ref: choices.ref, coupon: choices.coupon },
    mirror: choices.mirror && !printFirst,
    ...(only !== 'all' && { only: [only] }),
    ...(order !== 'preset' && { spread: order === 'spread' ? choices.spread : null }),
    ...(bedWidth !== null && bedHeight !== null && { bed: { width: bedWidth, height: bedHeight } }),
    split: choices.split && !printFirst,
    ...(printFirst && paper && { printOn: paper }),
    ...(choices.holes !== 'preset' && { holes: choices.holes }),
    ...(choices.release !== 'preset' && { release: choices.release }),
    ...(choices.unit !== 'preset' && { unit: choices.unit }),
    ...(choices.straight && { straight: true }),
  };
}

/** The unit that the file will be in. */
export const unitOf = ({ format, unit, preset }: CutChoices): 'mm' | 'in' =>
  format !== 'dxf' ? 'mm' : unit === 'preset' ? (preset?.dxf?.unit ?? 'mm') : unit;

/** What stands at the fields. The sentences of the job name them so. */
export const cutLabels = {
  hole: 'The finished hole',
  kerf: 'The kerf',
  card: 'Cut the card out as well',
  engrave: 'Engrave the markings',
  ref: 'Frame and targets for aligning',
  bed: 'The machine\u2019s bed',
  split: 'In parts where the bed is too small',
  coupon: 'A test coupon as well',
  paper: 'The paper in your printer',
  feed: 'Feed, mm a minute',
  power: 'Power while cutting, S',
  preset: 'a preset of your shop',
} as const;

export const namedAtFields: CutNames = (thing) => `\u201c${cutLabels[thing]}\u201d`;
