/** A name that every disk takes, without its ending. */
export const fileName = (name: string): string =>
  name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N} ._-]+/gu, ' ')
    .trim()
    .slice(0, 80) || 'pattern';
