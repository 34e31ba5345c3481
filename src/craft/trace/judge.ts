import type { Evidence } from './evidence.ts';
import { WEIGHTS, type Weights } from './weights.ts';

/** Confidence that a candidate is a pin, by itself: before anything is known of its page. */
export const confidenceAlone = (evidence: Evidence): number => logistic(evidence, WEIGHTS.alone);

/** Confidence that a candidate is a pin, beside the others of its page. */
export const confidenceAmong = (evidence: Evidence): number => logistic(evidence, WEIGHTS.among);

function logistic(evidence: Evidence, weights: Weights): number {
  let sum = weights.bias;
  for (const [name, weight] of Object.entries(weights.of)) sum += weight * evidence[name as keyof Evidence];
  return 1 / (1 + Math.exp(-sum));
}
