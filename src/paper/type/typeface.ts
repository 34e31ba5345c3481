import { create, type Font, type GlyphRun } from 'fontkit';
import type { Weight } from '../drawing/mark.ts';

/** The bytes of the TrueType files to print with: the two weights, and one that helps out letter by letter. */
export interface FontFiles {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  readonly fallback: Uint8Array;
}

export type Face = keyof FontFiles;

/** A stretch of text that one font file has all the letters of. */
export interface FaceRun {
  readonly face: Face;
  readonly text: string;
  /** In parts of the letter square. */
  readonly width: number;
}

/** How wide words run, which is all that a drawing needs to know of the letters. */
export interface LetterMeasure {
  /** How wide the text runs at this letter height, in the unit of `size`. */
  widthOf(text: string, size: number, weight: Weight): number;
}

/** What sheets and writers need to know of the letters. */
export interface Typeface extends LetterMeasure {
  readonly files: FontFiles;
  /** The text as it will be printed, in stretches of one font each. */
  runs(text: string, weight: Weight): readonly FaceRun[];
  /** The outlines of one stretch. */
  glyphs(run: FaceRun): GlyphRun;
  unitsPerEm(face: Face): number;
  /** Letters of the text that no font has; they are printed as an empty square. */
  missingIn(text: string, weight: Weight): readonly string[];
}

/** Opens the fonts. Throws where the bytes are no font. */
export function openTypeface(files: FontFiles): Typeface {
  const fonts: Record<Face, Font> = {
    regular: create(files.regular),
    bold: create(files.bold),
    fallback: create(files.fallback),
  };
  const known = new Map<string, readonly FaceRun[]>();

  const faceFor = (letter: string, weight: Weight): Face | undefined =>
    ([weight, 'fallback'] as const).find((face) => fonts[face].hasGlyphForCodePoint(letter.codePointAt(0)!));

  const split = (text: string, weight: Weight): FaceRun[] => {
    const runs: { face: Face; text: string }[] = [];
    for (const letter of printable(text)) {
      const found = faceFor(letter, weight);
      const face = found ?? 'fallback';
      const shown = found ? letter : '\u25a1';
      const last = runs.at(-1);
      if (last?.face === face) last.text += shown;
      else runs.push({ face, text: shown });
    }
    return runs.map((run) => ({
      ...run,
      width: fonts[run.face].layout(run.text).advanceWidth / fonts[run.face].unitsPerEm,
    }));
  };

  const runs = (text: string, weight: Weight): readonly FaceRun[] => {
    const key = `${weight} ${text}`;
    let found = known.get(key);
    if (!found) {
      found = split(text, weight);
      known.set(key, found);
    }
    return found;
  };

  return {
    files,
    runs,
    widthOf: (text, size, weight) => runs(text, weight).reduce((sum, run) => sum + run.width, 0) * size,
    glyphs: (run) => fonts[run.face].layout(run.text),
    unitsPerEm: (face) => fonts[face].unitsPerEm,
    missingIn: (text, weight) => [...printable(text)].filter((letter) => !faceFor(letter, weight)),
  };
}

/**
 * One line of what a person can see: line breaks and tabs become spaces; other control characters, and those that
 * turn the direction of what follows, are left out, since names in files are not to be trusted.
 */
const printable = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/\s+/gu, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}]/gu, '');
