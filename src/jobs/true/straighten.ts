import { applyAffine } from '#base/geometry/affine.ts';
import { distance } from '#base/geometry/point.ts';
import type { Progress } from '#base/progress.ts';
import { done, failed, type Result } from '#base/result.ts';
import { type Proposal, proposalParts } from '#craft/true/index.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { rounded, roundedPoint } from '../results/numbers.ts';
import { type TrueResult, toMissingResult, toStructureResult } from '../results/true.ts';
import type { TrueTrouble } from '../trouble.ts';
import { missingInWords } from '../words/true.ts';
import { applyProposal } from './apply.ts';
import { type Choice, isTaken, unknownPart } from './choice.ts';
import type { KnownWords } from './known.ts';
import { proposeTrue } from './propose.ts';

/** A pattern with the chosen parts of a proposal in it, the whole proposal, and its result for machines. */
export interface Trued {
  readonly pattern: Pattern;
  readonly proposal: Proposal;
  readonly result: TrueResult;
}

/** Proposes where the pins of a pattern should stand and takes the chosen parts. */
export function straightenPattern(
  pattern: Pattern,
  known: KnownWords,
  choice: Choice,
  progress: Progress,
): Result<Trued, TrueTrouble> {
  const proposed = proposeTrue(pattern, known, progress);
  if (!proposed.ok) return proposed;
  const { proposal, knownLength } = proposed.value;
  const ids = new Set([...proposal.structures, ...proposalParts(proposal)].map(({ id }) => id));
  const unknown = unknownPart(ids, choice);
  if (unknown !== null) return failed({ kind: 'unknown-part', part: unknown, parts: [...ids] });

  const straightened = applyProposal(pattern, proposal, (part) => isTaken(part, choice), knownLength);
  return done({ pattern: straightened.pattern, proposal, result: resultOf(pattern, proposal, straightened) });
}

function resultOf(
  before: Pattern,
  proposal: Proposal,
  { pattern, places, whole }: ReturnType<typeof applyProposal>,
): TrueResult {
  const ways = before.pins.map((pin, index) => distance(pin, places[index]!));
  return {
    unit: pattern.unit,
    pins: places.map((place, index) => ({
      ...roundedPoint(place),
      structure: proposal.structureOf[index] ?? null,
    })),
    missing: proposal.missing.map((missing, index) =>
      toMissingResult(missing, index, applyAffine(whole, missing), missingInWords(missing)),
    ),
    stray: [...proposal.stray],
    structures: proposal.structures.map(toStructureResult),
    moved: {
      pins: ways.filter((way) => way > 0).length,
      farthest: rounded(ways.reduce((most, way) => Math.max(most, way), 0)),
    },
  };
}
