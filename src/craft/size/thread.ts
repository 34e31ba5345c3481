import { done, type Result } from '#base/result.ts';
import { diametersOf, diametersOfWraps, texOfWraps, wrapsPerCmOf } from '#base/units/yarn/diameter.ts';
import type { Fibre } from '#base/units/yarn/fibre.ts';
import { parseYarn } from '#base/units/yarn/parse.ts';
import { yarnSystems } from '#base/units/yarn/system.ts';
import type { YarnTrouble } from '#base/units/yarn/trouble.ts';
import { plies, type Yarn } from '#base/units/yarn/yarn.ts';
import type { ThreadEntry } from '#pattern/threads/thread-list.ts';

/** A thread with all that sizing needs to know of it. */
export interface Thread {
  readonly name: string;
  readonly fibre: Fibre;
  /** As its label tells of it; absent where only its windings were counted. */
  readonly yarn?: Yarn;
  /** Grams in a kilometre: from the label, else estimated from the windings. */
  readonly tex: number;
  /** Windings side by side in a centimetre. */
  readonly wrapsPerCm: number;
  readonly wrapsFrom: 'measured' | 'reckoned';
  /** Diameter as it winds on a ruler, mm. */
  readonly wrapped: number;
  /** Diameter among others in firm cloth, mm. */
  readonly compact: number;
}

/**
 * The thread of an entry. Windings that a maker counted go before those reckoned from the label, which are right to
 * about a tenth; where only windings are known, its tex is estimated from them. One of the two must be there.
 */
export function threadOf(entry: ThreadEntry): Result<Thread, YarnTrouble> {
  const { name, fibre, count, wrapsPerCm } = entry;
  const parsed = count === undefined ? null : parseYarn(count);
  if (parsed && !parsed.ok) return parsed;
  if (wrapsPerCm === undefined) {
    if (!parsed) throw new TypeError(`threadOf: ${JSON.stringify(entry)}`);
    return done(threadOfYarn(name, fibre, parsed.value));
  }
  const { compact, wrapped } = diametersOfWraps(wrapsPerCm);
  const yarn = parsed ? { yarn: parsed.value } : {};
  const tex = parsed ? parsed.value.tex : texOfWraps(wrapsPerCm, fibre);
  return done({ name, fibre, ...yarn, tex, wrapsPerCm, wrapsFrom: 'measured', wrapped, compact });
}

/** The thread that a label tells of, its windings reckoned. */
export function threadOfYarn(name: string, fibre: Fibre, yarn: Yarn): Thread {
  const { compact, wrapped } = diametersOf(yarn.tex, fibre);
  return {
    name,
    fibre,
    yarn,
    tex: yarn.tex,
    wrapsPerCm: wrapsPerCmOf(wrapped),
    wrapsFrom: 'reckoned',
    wrapped,
    compact,
  };
}

/**
 * Whether the number of a folded silk could be meant the other way: 60/2 of two strands of 60, as it was read, or by
 * silk's old habit of two strands of 120. Only counted wraps, or the maker's word, tell.
 */
export const eitherHabit = ({ fibre, yarn, wrapsFrom }: Thread): boolean =>
  fibre === 'silk' &&
  wrapsFrom === 'reckoned' &&
  yarn !== undefined &&
  plies(yarn) > 1 &&
  !yarn.resultantTold &&
  !yarnSystems[yarn.system].direct;
