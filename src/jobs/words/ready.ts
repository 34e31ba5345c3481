import type { ReadyTrouble } from '../trouble.ts';

/** Why there is nothing to make ready, and what to do next. */
export function readyTroubleInWords(trouble: ReadyTrouble): string {
  switch (trouble.kind) {
    case 'nothing-to-prick':
      return 'No pins were found, so there is nothing to make ready. Is this the right picture, sharp and not too small?';
    case 'no-size':
      return [
        'Nobody knows how large this pattern is, so it cannot be printed true to scale. Give --dpi, or --span with a distance that you measured on the paper.',
        ...trouble.said.filter((sentence) => /dots an inch|camera/.test(sentence)),
      ].join(' ');
  }
}
