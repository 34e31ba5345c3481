import type { Change } from '#pattern/change/change.ts';

/** One thing a person did to a pattern, as it is undone and told in the list of what was done. */
export interface Step {
  readonly change: Change;
  /** What was done, in a few words: 'Moved a pin'. */
  readonly words: string;
}
