import type { Progress } from '#base/progress.ts';
import type { Finding } from '#craft/look/finding.ts';
import { lookOver } from '#craft/look/look-over.ts';
import { defaultLookOptions, type LookOptions } from '#craft/look/options.ts';
import { findRegularity, roundsOf } from '#craft/true/index.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Regularity } from '#pattern/structure.ts';

export interface Looked {
  readonly findings: readonly Finding[];
  readonly regularity: Regularity;
}

/** Looks a pattern over with every rule; the regularity of its pins is found once, here. */
export function look(pattern: Pattern, progress: Progress, options: Partial<LookOptions> = {}): Looked {
  const regularity = findRegularity(pattern.pins, { rounds: roundsOf(pattern), progress });
  const findings = lookOver({ pattern, regularity, options: { ...defaultLookOptions, ...options } });
  return { findings, regularity };
}
