import type { Doubt } from './pattern.ts';

/** Why a mark on the paper may be no pin, as part of a sentence: 'is faint'. The one place that words doubts. */
export const doubtInWords: Readonly<Record<Doubt, string>> = {
  faint: 'is faint',
  small: 'is smaller than the other dots',
  large: 'is larger than the other dots',
  oval: 'is not round',
  crossing: 'may be no more than a crossing of lines',
  'line-end': 'may be no more than the end of a line',
  'in-thick-line': 'lies in a thick line',
  'in-text': 'lies in or near letters',
  speck: 'may be a speck',
  touching: 'touches something else',
  edge: 'lies at the edge of the picture',
};
