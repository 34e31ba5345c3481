import type { Doubt } from '#pattern/pattern.ts';
import type { Candidate } from './candidates.ts';
import type { Evidence } from './evidence.ts';

/** In plain words why a candidate may not be a pin, or not a clean one; never empty. */
export function doubtsOf({ traits, long }: Candidate, evidence: Evidence): Doubt[] {
  const doubts: Doubt[] = [];
  if (evidence.lettering > 0.5) doubts.push('in-text');
  if (traits.widest > 1.5) doubts.push('in-thick-line');
  else if (traits.lines >= 3 || (traits.lines === 2 && traits.bulge < 0.2)) doubts.push('crossing');
  else if (traits.lines === 1) doubts.push('line-end');
  if (traits.size < 0.65 && long < 1.2) doubts.push('speck');
  else if (traits.size < 0.82) doubts.push('small');
  if (traits.size > 1.2) doubts.push('large');
  if (evidence.offDepth > 0.3) doubts.push('faint');
  if (doubts.length === 0) doubts.push(traits.scatter > 0.15 ? 'oval' : 'faint');
  return doubts;
}
