/** How the next steps are called where a person works: the command's options, or what stands on the bench. */
export interface Door {
  /** How to say how large the paper is. */
  readonly measure: string;
  /** The same within a sentence. */
  readonly measureInstead: string;
  /** Where marks that are in doubt are gone through. */
  readonly doubtful: string;
  /** How the size of a pattern comes to be known. */
  readonly makeItsSizeKnown: string;
  /** How to say how thick the card is, within a sentence. */
  readonly cardThickness: string;
}

export const COMMAND: Door = {
  measure: 'Give --dpi, or --span with a distance that you measured on the paper.',
  measureInstead: 'give --dpi',
  doubtful: '"look" lists them',
  makeItsSizeKnown: 'Trace it again with --dpi or --span.',
  cardThickness: 'give --card-thickness',
};

export const BENCH: Door = {
  measure: 'Measure a distance on the paper with a ruler, and type it in here.',
  measureInstead: 'measure a distance on the paper and type it in here',
  doubtful: 'the stage Pins goes through them',
  makeItsSizeKnown: 'Measure a distance on its paper at the stage Paper.',
  cardThickness: 'type in how thick the card is',
};
