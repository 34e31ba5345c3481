import { visible } from '#jobs/words/quoted.ts';

/**
 * Text from outside (file names, words in files) as it may be shown: what steers a terminal or turns the reading
 * direction is written out, so that no file can clear the screen, forge a line or hide its ending.
 */
export const clean = (text: string): string => text.split('\n').map(visible).join('\n');

/** A file's name for a sentence: cleaned, on one line, and cut in the middle where it is very long. */
export function nameInWords(name: string): string {
  const shown = visible(name);
  return shown.length <= LONGEST ? shown : `${shown.slice(0, LONGEST / 2)}…${shown.slice(-LONGEST / 2)}`;
}

const LONGEST = 100;
