import { gapRule } from './gaps.ts';

export const gapInLattice = gapRule(
  'gap-in-lattice',
  'A pin missing from the ground',
  ['lattice', 'polar'],
  'a pin is missing from the ground',
);
