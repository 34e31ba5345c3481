import { gapRule } from './gaps.ts';

export const gapInRepeat = gapRule(
  'gap-in-repeat',
  'A pin that the other repeats have',
  ['repeat'],
  'the other repeats have a pin that is missing',
);
