import { z } from 'zod';
import { fibres } from '#base/units/yarn/fibre.ts';
import type { CopyChain } from '#craft/size/copier.ts';
import type { RepeatChoice } from '#craft/size/repeats.ts';
import { eitherHabit } from '#craft/size/thread.ts';
import type { Sizing, ThreadAtSize } from '../size/size.ts';
import { rounded } from './numbers.ts';

const mm = z.number().nonnegative();

const measures = z.strictObject({
  footsideSpacing: mm.nullable().describe('mm; null where nothing tells.'),
  repeat: mm.nullable().describe('mm along the footside; null where nothing tells.'),
});

const copies = z
  .strictObject({
    percents: z
      .array(z.number())
      .describe('What to set, one copy after the other; none where nothing changes.'),
    reached: z.number().describe('The size that they make, as a factor.'),
  })
  .nullable();

const choice = z.strictObject({
  taken: z.boolean(),
  way: z.enum(['scale', 'ease']),
  counts: z.array(z.int().positive()).describe('Whole repeats on each stretch.'),
  scale: z.number(),
  ease: z.array(z.number()).describe('mm by which each stretch is longer than its lace.'),
  cost: z.number().nonnegative().describe('The larger change, as a share.'),
  fits: z.boolean(),
});

const thread = z.strictObject({
  name: z.string(),
  fibre: z.enum(fibres),
  tex: z.number(),
  wrapsPerCm: z.number(),
  wrapsFrom: z.enum(['measured', 'reckoned']),
  eitherHabit: z
    .boolean()
    .describe(
      'Whether it is a folded silk whose number may be that of the whole thread, which is then far finer.',
    ),
  wrapped: mm.describe('Diameter as it winds on a ruler, mm.'),
  compact: mm.describe('Diameter pulled tight in cloth, mm.'),
  rightSpacing: mm.describe('The footside spacing at which it is just right, mm.'),
  here: z
    .strictObject({
      wraps: z.number().describe('Wraps in a footside gap.'),
      fit: z.enum(['suits', 'rather-thin', 'rather-thick', 'thin', 'thick']),
      scale: z.number().describe('The factor that would make the pattern suit the thread.'),
      copies,
    })
    .nullable(),
});

/** What `pinlight size --json` prints. */
export const sizeResult = z.strictObject({
  wrapsWanted: z.number().describe('In a footside gap; common practice, from memory, unless it was given.'),
  before: measures,
  factor: z.number(),
  after: measures,
  repeats: z.array(choice).describe('Whole repeats that were weighed; none where no place was to be filled.'),
  redrafted: z.boolean().describe('Whether the recipe was given the new number of repeats.'),
  copies: copies.describe('null where nothing changes, or three copies do not reach it.'),
  threads: z.array(thread),
  wanted: z.array(z.strictObject({ fibre: z.enum(fibres), wrapsPerCm: z.number(), tex: z.number() })),
  pins: z
    .strictObject({
      pin: mm,
      from: z.enum(['grid', 'thread', 'measured']),
      needle: z.strictObject({
        least: mm,
        wanted: mm,
        most: mm,
        named: z.array(z.string()),
        others: z.array(z.string()).describe('As thick in other gauges.'),
      }),
    })
    .nullable(),
});

export type SizeResult = z.infer<typeof sizeResult>;

export function toSizeResult(sizing: Sizing): SizeResult {
  const { wish, before, factor, after, fitted, threads, wanted, pins } = sizing;
  return {
    wrapsWanted: rounded(wish.wraps),
    before: toMeasures(before),
    factor: fine(factor),
    after: toMeasures(after),
    repeats: fitted ? fitted.choices.map((one) => toChoice(one, one === fitted.chosen)) : [],
    redrafted: sizing.redrafted,
    copies: toCopies(sizing.copies),
    threads: threads.map(toThread),
    wanted: wanted.map(({ fibre, wrapsPerCm, tex }) => ({
      fibre,
      wrapsPerCm: rounded(wrapsPerCm),
      tex: rounded(tex),
    })),
    pins: pins && {
      pin: rounded(pins.choice.pin),
      from: pins.choice.from,
      needle: {
        least: rounded(pins.needle.least),
        wanted: rounded(pins.needle.wanted),
        most: rounded(pins.needle.most),
        named: pins.needle.needles.map(({ label }) => label),
        others: pins.needle.others.map(({ gauge, size }) => `${gauge} ${size.label}`),
      },
    },
  };
}

/** Factors carry a millionth: a thousandth is 0.3 mm on a long edging. */
const fine = (value: number): number => Math.round(value * 1e6) / 1e6;

const toMeasures = ({ spacing, repeat }: Sizing['before']) => ({
  footsideSpacing: spacing === null ? null : rounded(spacing),
  repeat: repeat === null ? null : rounded(repeat),
});

const toCopies = (chain: CopyChain | null) =>
  chain && { percents: [...chain.percents], reached: fine(chain.reached) };

const toChoice = ({ way, counts, scale, ease, cost, fits }: RepeatChoice, taken: boolean) => ({
  taken,
  way,
  counts: [...counts],
  scale: fine(scale),
  ease: ease.map(rounded),
  cost: fine(cost),
  fits,
});

const toThread = ({ thread: one, rightSpacing, here }: ThreadAtSize) => ({
  name: one.name,
  fibre: one.fibre,
  tex: rounded(one.tex),
  wrapsPerCm: rounded(one.wrapsPerCm),
  wrapsFrom: one.wrapsFrom,
  eitherHabit: eitherHabit(one),
  wrapped: rounded(one.wrapped),
  compact: rounded(one.compact),
  rightSpacing: rounded(rightSpacing),
  here: here && {
    wraps: rounded(here.wraps),
    fit: here.fit,
    scale: fine(here.scale),
    copies: toCopies(here.copies),
  },
});
