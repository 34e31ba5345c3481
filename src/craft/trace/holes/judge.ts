import type { Evidence } from './evidence.ts';
import { WEIGHTS, type Weights } from './weights.ts';

/** Confidence that a candidate is a pin, by itself: before anything is known of its page. */
export const confidenceAlone = (evidence: Evidence): number => logistic(evidence, WEIGHTS.alone);

/** A full stop or the dot of an i is as round as a pin: in plain lettering the best dot counts no more than this. */
const MOST_IN_LETTERING = 0.15;

/** Confidence that a candidate is a pin, beside the others of its page. */
export function confidenceAmong(evidence: Evidence): number {
  const confidence = logistic(evidence, WEIGHTS.among);
  return evidence.lettering < 1 ? confidence : Math.min(confidence, MOST_IN_LETTERING);
}

function logistic(evidence: Evidence, weights: Weights): number {
  let sum = weights.bias;
  for (const [name, weight] of Object.entries(weights.of)) sum += weight * evidence[name as keyof Evidence];
  return 1 / (1 + Math.exp(-sum));
}
