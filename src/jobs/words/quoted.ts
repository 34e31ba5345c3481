/**
 * Text from a file in quotation marks, fit for a sentence: what cannot be seen, or would turn the writing round or
 * steer a terminal, is shown by its number.
 */
export const quoted = (text: string): string => `"${visible(text)}"`;

export const visible = (text: string): string =>
  text.replace(/[\p{C}\p{Zl}\p{Zp}]/gu, (char) => `<U+${codeOf(char)}>`);

/** The number of a character as Unicode writes it: at least four of 0-9 and A-F. */
export const codeOf = (char: string): string =>
  char.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
