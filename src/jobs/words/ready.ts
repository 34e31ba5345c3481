import type { ReadyTrouble } from '../trouble.ts';

/** Why a pattern cannot be worked on, and what to do next. */
export function readyTroubleInWords(trouble: ReadyTrouble): string {
  switch (trouble.kind) {
    case 'too-many-pins':
      return `The pattern has ${trouble.count} pins, and at most ${trouble.limit} can be worked on. Split it into parts.`;
    case 'nothing-to-prick':
      return 'No pins were found, so there is nothing to make ready. Is this the right picture, sharp and not too small?';
    case 'no-size':
      return [
        'Nobody knows how large this pattern is, so it cannot be printed true to scale. Give --dpi, or --span with a distance that you measured on the paper.',
        ...trouble.said.filter((sentence) => /dots an inch|camera/.test(sentence)),
      ].join(' ');
  }
}
