import type { LetterMeasure } from '#paper/type/typeface.ts';

export const SHEET_LETTERS = '"Source Sans 3", system-ui, sans-serif';

/** Widths of words in the page's own letters. */
export function screenLetters(): LetterMeasure {
  const context = new OffscreenCanvas(1, 1).getContext('2d')!;
  return {
    widthOf(text, size, weight) {
      context.font = `${weight === 'bold' ? 600 : 400} 100px ${SHEET_LETTERS}`;
      return (context.measureText(text).width * size) / 100;
    },
  };
}
