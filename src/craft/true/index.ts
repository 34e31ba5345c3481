/** Straightening: what the pins of a pattern meant, and a proposal that can be taken in parts. */
export { copyDistortion, type KnownTruth } from './distortion.ts';
export {
  type PinMove,
  type Proposal,
  type ProposalPart,
  proposalParts,
  type StraightenOptions,
  straighten,
  type Taken,
  takeParts,
} from './proposal.ts';
export { findRegularity, type RegularityOptions } from './regularity.ts';
export { roundsOf } from './rounds.ts';
