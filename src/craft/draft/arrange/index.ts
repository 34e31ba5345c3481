/** Whole patterns arranged: pure functions from patterns to patterns. Angles are radians, lengths mm. */
export { joinPatterns } from './join.ts';
export { type MirrorLine, mirrorPattern, shiftPattern, turnPattern } from './move.ts';
export { reangleGround } from './reangle.ts';
export { repeatPattern } from './repeat.ts';
export type { ArrangeTrouble } from './trouble.ts';
