import { noFilm } from '#base/colour/film.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { drawPattern } from '../ink/pattern-ink.ts';
import type { Typeface } from '../type/typeface.ts';
import type { CutLine } from './drawing.ts';
import { cutLines } from './lines.ts';
import { COINCIDENT } from './merge.ts';
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
  const lines = withoutDoubled(marks.flatMap((mark) => cutLines(mark, typeface)));
  return {
    lines: lines.kept,
    notes: [
      ...(simplified ? [{ kind: 'engraved-by-middle' } as const] : []),
      ...(lines.doubled ? [{ kind: 'lines-merged', count: lines.doubled } as const] : []),
    ],
  };
}

/** Straight lines that are there twice, either way round, are engraved once: burnt twice, they would go deeper. */
function withoutDoubled(lines: readonly CutLine[]): { kept: CutLine[]; doubled: number } {
  const seen = new Set<string>();
  const kept = lines.filter((line) => {
    if (line.kind === 'circle' || line.path.length !== 2) return true;
    const ends = line.path.map((step) =>
      step.step === 'close'
        ? ''
        : `${Math.round(step.to.x / COINCIDENT)} ${Math.round(step.to.y / COINCIDENT)}`,
    );
    const key = ends.sort().join(' ');
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return { kept, doubled: lines.length - kept.length };
}

/** Thick lines, dashes and filled arrow heads become thin whole lines. */
const losesByEngraving = (mark: { kind: string; role: string; dash?: unknown }): boolean =>
  mark.role === 'gimp' || mark.kind === 'fill' || mark.dash !== undefined;
