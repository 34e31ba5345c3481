import type { Attempt } from './attempt.ts';
import type { LightTrouble, Tried } from './judgement.ts';

/** Spots with softer edges than this are all blur: nothing can be told from their shape. */
export const BLURRED = 1.22;

/** Why no reading of the picture could be believed. */
export function whyNot(tries: readonly Attempt[], pins: number): LightTrouble {
  const tried = triedIn(tries);
  const holes = tried.light;
  const poor = tries.find((one) => one.poor !== undefined)?.poor;
  const isSoft = tries.some(({ found, count }) => found.softness > BLURRED && count > 0.3 * pins);
  if (isSoft) return { kind: 'light-blurred', tried };
  if (poor) return { kind: 'light-poor-match', ...poor, pins, tried };
  if (holes < 6 && tried.dark < 6) return { kind: 'light-no-holes', tried };
  if (holes < 0.3 * pins && tried.dark < 0.3 * pins)
    return { kind: 'light-few-holes', holes: Math.max(holes, tried.dark), pins, tried };
  const explained = tries.reduce((count, one) => Math.max(count, one.tried.explained), 0);
  return { kind: 'light-no-match', holes: Math.max(holes, tried.dark), pins, explained, tried };
}

/** What all readings came to. */
export function triedIn(tries: readonly Attempt[]): Tried {
  const most = (holes: 'light' | 'dark'): number =>
    tries.reduce((count, tried) => (tried.holes === holes ? Math.max(count, tried.count) : count), 0);
  return {
    light: most('light'),
    dark: most('dark'),
    guesses: tries.reduce((sum, { tried: { guesses } }) => sum + guesses, 0),
  };
}
