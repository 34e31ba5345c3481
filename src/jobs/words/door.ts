/** How the next steps are called where a person works: the command's options, or what stands on the bench. */
export interface Door {
  /** How to say how large the paper is. */
  readonly measure: string;
  /** The same within a sentence. */
  readonly measureInstead: string;
  /** Where marks that are in doubt are gone through. */
  readonly doubtful: string;
}

export const COMMAND: Door = {
  measure: 'Give --dpi, or --span with a distance that you measured on the paper.',
  measureInstead: 'give --dpi',
  doubtful: '"look" lists them',
};

export const BENCH: Door = {
  measure: 'Measure a distance on the paper with a ruler, and type it in here.',
  measureInstead: 'measure a distance on the paper and type it in here',
  doubtful: 'the stage Pins goes through them',
};
