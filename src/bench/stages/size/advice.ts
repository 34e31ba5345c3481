import type { SizeAdvice } from '#jobs/words/size-trouble.ts';

/** What to do next at this stage, where a size cannot be found. */
export const adviceHere: SizeAdvice = {
  'size-scale-unknown':
    'at the stage Paper, or at Straighten under “What copying did to it”, by two pins whose distance you know',
  'size-no-spacing': 'type it under “What the pattern does not tell”',
  'size-no-repeat': 'type it under “What the pattern does not tell”',
  'size-no-thread': 'Choose one of your threads, or type what stands on the spool',
  'corners-too-long': 'type less for the corners',
  limit: (percent) => `Type ${percent} as the most that may change if you want it all the same`,
};
