/**
 * Text from outside (file names, words in files) as it may be shown: characters that steer a terminal or turn the
 * reading direction are written out, so that no file can clear the screen, forge a line or hide its ending.
 */
export const clean = (text: string): string =>
  text.replace(STEERING, (char) => `\\u{${char.codePointAt(0)!.toString(16)}}`);

/** Controls but the line feed, direction marks and what is unseen but for the joiners that some scripts need. */
const STEERING = /(?![\n\u200c\u200d])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}]/gu;

/** A file's name for a sentence: cleaned, on one line, and cut in the middle where it is very long. */
export function nameInWords(name: string): string {
  const shown = clean(name).replaceAll('\n', '\\u{a}');
  return shown.length <= LONGEST ? shown : `${shown.slice(0, LONGEST / 2)}…${shown.slice(-LONGEST / 2)}`;
}

const LONGEST = 100;
