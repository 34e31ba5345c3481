import type { Progress } from '#base/progress.ts';
import { done, failed, type Result } from '#base/result.ts';
import { type Proposal, roundsOf, straighten } from '#craft/true/index.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { TrueTrouble } from '../trouble.ts';
import { type KnownWords, knownOf } from './known.ts';

/** A proposal, and what taking it needs besides. */
export interface Proposed {
  readonly proposal: Proposal;
  /** The true distance that was known, mm; null where none was. */
  readonly knownLength: number | null;
}

/** Proposes where the pins of a pattern should stand; nothing is moved until parts of it are taken (`applyProposal`). */
export function proposeTrue(
  pattern: Pattern,
  known: KnownWords,
  progress: Progress,
): Result<Proposed, TrueTrouble> {
  const truth = knownOf(pattern, known);
  if (!truth.ok) return truth;
  const proposal = straighten(pattern.pins, { ...truth.value, rounds: roundsOf(pattern), progress });
  if (proposal.undistort === null && known.angle !== undefined) return failed({ kind: 'no-ground' });
  return done({ proposal, knownLength: truth.value.knownDistance?.length ?? null });
}
