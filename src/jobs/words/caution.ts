/** Common practice, no source. */
export const NEEDLE_CAUTION =
  'Needles are sharp: prick on a firm pad, and never with a finger under the card.';
