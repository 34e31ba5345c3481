import { noFilm } from '#base/colour/film.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { drawPattern } from '../ink/pattern-ink.ts';
import type { Typeface } from '../type/typeface.ts';
import type { CutLine } from './drawing.ts';
import { cutLines } from './lines.ts';
import type { CutNote } from './options.ts';

/** The pattern's markings as lines to engrave, in its own mm: the very ink of its marking guide, without the tints. */
export function engraving(
  pattern: Pattern,
  typeface: Typeface,
  hole: number,
): { lines: CutLine[]; notes: CutNote[] } {
  const ink = drawPattern(pattern, {
    typeface,
    hole: { mark: 'dot', diameter: hole },
    spread: 0,
    film: noFilm,
    line: 0.2,
  });
  // Of a tinted area its edge is engraved: burnt over, it would weaken the card.
  const marks = [...ink.tints.filter(({ kind }) => kind === 'stroke'), ...ink.markings];
  const simplified = marks.length < ink.tints.length + ink.markings.length || marks.some(losesByEngraving);
  return {
    lines: marks.flatMap((mark) => cutLines(mark, typeface)),
    notes: simplified ? [{ kind: 'engraved-by-middle' }] : [],
  };
}

/** Thick lines, dashes and filled arrow heads become thin whole lines. */
const losesByEngraving = (mark: { kind: string; role: string; dash?: unknown }): boolean =>
  mark.role === 'gimp' || mark.kind === 'fill' || mark.dash !== undefined;
