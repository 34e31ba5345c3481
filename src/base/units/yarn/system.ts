import { MM_PER_INCH } from '../length.ts';

/**
 * How a thread's thickness is numbered. Direct systems weigh a length (a thicker thread has the higher number),
 * indirect ones measure a weight (a finer thread has the higher number).
 */
export type YarnSystem =
  | 'tex'
  | 'dtex'
  | 'den'
  | 'jute'
  | 'dram'
  | 'Nm'
  | 'Ne'
  | 'NeL'
  | 'NeK'
  | 'run'
  | 'skein'
  | 'cut'
  | 'yd/lb'
  | 'metric ticket'
  | 'cotton ticket';

/** A yarn count: a number in one of the systems. */
export interface YarnCount {
  readonly system: YarnSystem;
  readonly count: number;
}

interface Definition {
  readonly direct: boolean;
  /** Tex of the number 1. */
  readonly texOfOne: number;
  /** What it is, in few words. */
  readonly what: string;
}

/** Avoirdupois pound of 1959, grams, and yard, metres: both exact. */
const POUND = 453.59237;
const YARD = (36 * MM_PER_INCH) / 1000;

const direct = (texOfOne: number, what: string): Definition => ({ direct: true, texOfOne, what });
/** Number 1 of a system of hanks has one hank of `yards` in a pound. */
const hanks = (yards: number, what: string): Definition => ({
  direct: false,
  texOfOne: (1000 * POUND) / (yards * YARD),
  what,
});

/**
 * Definitions as in ASTM D2260 and GNU `units`; the Yorkshire skein is 256 yards to the pound. Ticket numbers are
 * three times the metric or the cotton count of the finished thread (common practice of the sewing trade).
 */
export const yarnSystems: Readonly<Record<YarnSystem, Definition>> = {
  tex: direct(1, 'grams in 1000 m'),
  dtex: direct(0.1, 'grams in 10,000 m'),
  den: direct(1 / 9, 'denier, grams in 9000 m'),
  jute: direct((1000 * POUND) / (14_400 * YARD), 'jute count, pounds in 14,400 yards'),
  dram: direct((1000 * POUND) / 256 / (1000 * YARD), 'silk drams in 1000 yards'),
  Nm: { direct: false, texOfOne: 1000, what: 'metric count, metres in a gram' },
  Ne: hanks(840, 'English cotton count, hanks of 840 yards in a pound'),
  NeL: hanks(300, 'linen lea, leas of 300 yards in a pound'),
  NeK: hanks(560, 'worsted count, hanks of 560 yards in a pound'),
  run: hanks(1600, 'woollen run, 1600 yards in a pound'),
  skein: hanks(256, 'Yorkshire woollen skein, 256 yards in a pound'),
  cut: hanks(300, 'woollen cut, 300 yards in a pound'),
  'yd/lb': hanks(1, 'yards in a pound'),
  'metric ticket': {
    direct: false,
    texOfOne: 3000,
    what: 'metric ticket, three times the Nm of the whole thread',
  },
  'cotton ticket': hanks(840 / 3, 'cotton ticket, three times the Ne of the whole thread'),
};

/** Tex (grams in a kilometre) of a count greater than nought. */
export function texOfCount({ system, count }: YarnCount): number {
  if (!(count > 0)) throw new RangeError(`texOfCount: ${count}`);
  const { direct, texOfOne } = yarnSystems[system];
  return direct ? count * texOfOne : texOfOne / count;
}

/** The number that a thread of `tex` has in another system: each is the other's inverse. */
export function countOfTex(tex: number, system: YarnSystem): number {
  if (!(tex > 0)) throw new RangeError(`countOfTex: ${tex}`);
  const { direct, texOfOne } = yarnSystems[system];
  return direct ? tex / texOfOne : texOfOne / tex;
}

/** Whether the number tells of the whole thread whatever it is made of, so that no strands are told with it. */
export const isTicket = (system: YarnSystem): boolean => system.endsWith('ticket');
