import { gapRule } from './gaps.ts';

export const gapInSymmetry = gapRule(
  'gap-in-symmetry',
  'A pin that the other half has',
  ['symmetry'],
  'the matching part of the pattern has a pin that is missing',
);
