import { texOfCount, type YarnSystem } from './system.ts';

/** Like strands in a thread: how many, and the tex of each before they were twisted together. */
export interface Strands {
  readonly tex: number;
  readonly number: number;
}

/** A thread as its label tells of it. */
export interface Yarn {
  /** What is twisted together; a single is one strand. */
  readonly strands: readonly Strands[];
  /** Tex of the whole thread (its resultant). */
  readonly tex: number;
  /** Whether the label tells the whole thread's own tex; else it is the sum of the strands, without contraction. */
  readonly resultantTold: boolean;
  /** The system of the label. */
  readonly system: YarnSystem;
}

/**
 * Which thread the number before the stroke counts. Cotton, linen and wool number the strand: 60/2 is two strands of
 * 60 and runs as 30. Old spun silk numbers the finished thread: 60/2 is two strands of 120 and runs as 60
 * (C. P. Brooks, Cotton Manufacturing: "30s/2 in silk will wrap 30s").
 */
export type FoldedHabit = 'strand' | 'whole';

/** `plies` like strands of the count given, by either habit. */
export function foldedYarn(
  system: YarnSystem,
  count: number,
  plies: number,
  habit: FoldedHabit = 'strand',
): Yarn {
  if (!Number.isInteger(plies) || plies < 1) throw new RangeError(`foldedYarn: ${plies} plies`);
  const tex = texOfCount({ system, count });
  const strand = habit === 'whole' ? tex / plies : tex;
  return {
    strands: [{ tex: strand, number: plies }],
    tex: strand * plies,
    resultantTold: habit === 'whole' && plies > 1,
    system,
  };
}

/**
 * Tex of strands twisted together. `takeUp` is the length of strand used up beyond the length of thread made, as a
 * share of the latter: 0.1 where 1.1 m of strand make 1 m of thread.
 */
export const resultantTex = (strands: readonly Strands[], takeUp = 0): number =>
  strands.reduce((sum, { tex, number }) => sum + tex * number, 0) * (1 + takeUp);

/** Strands in all. */
export const plies = ({ strands }: Yarn): number => strands.reduce((sum, { number }) => sum + number, 0);
