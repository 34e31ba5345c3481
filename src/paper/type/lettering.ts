import type { Point } from '#base/geometry/point.ts';
import type { Colour, Role, Text, Weight } from '../drawing/mark.ts';
import type { LetterMeasure } from './typeface.ts';

/** How words look: letter height in mm, weight and colour. */
export interface Lettering {
  readonly size: number;
  readonly weight: Weight;
  readonly colour: Colour;
}

export interface TextPlace {
  readonly at: Point;
  readonly align?: Text['align'];
  readonly turn?: number;
  readonly role?: Role;
}

/** One line of text at its place, measured. */
export const textLine = (
  typeface: LetterMeasure,
  text: string,
  { size, weight, colour }: Lettering,
  { at, align = 'left', turn = 0, role = 'note' }: TextPlace,
): Text => ({
  kind: 'text',
  role,
  at,
  text,
  size,
  weight,
  colour,
  width: typeface.widthOf(text, size, weight),
  align,
  turn,
});

/** The text broken into lines no wider than `width` mm, between words where it can be, else within one. */
export function wrapLines(typeface: LetterMeasure, text: string, style: Lettering, width: number): string[] {
  const fits = (line: string): boolean => typeface.widthOf(line, style.size, style.weight) <= width;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/u).filter(Boolean)) {
    const longer = line ? `${line} ${word}` : word;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line) lines.push(line);
    const pieces = breakWord(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1)!;
  }
  if (line) lines.push(line);
  return lines;
}

/** The text, or as much of it as fits with an ellipsis behind it. */
export function shorten(typeface: LetterMeasure, text: string, style: Lettering, width: number): string {
  if (typeface.widthOf(text, style.size, style.weight) <= width) return text;
  const letters = [...text];
  let [fits, tooLong] = [0, letters.length];
  while (tooLong - fits > 1) {
    const middle = (fits + tooLong) >> 1;
    const cut = `${letters.slice(0, middle).join('').trimEnd()}\u2026`;
    if (typeface.widthOf(cut, style.size, style.weight) <= width) fits = middle;
    else tooLong = middle;
  }
  return `${letters.slice(0, fits).join('').trimEnd()}\u2026`;
}

function breakWord(word: string, fits: (line: string) => boolean): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece && !fits(piece + letter)) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}
