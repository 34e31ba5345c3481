import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { Colour, InkMark } from '../drawing/mark.ts';
import { parallelOf } from '../drawing/path.ts';
import { LabelPlacer } from '../ink/labels.ts';
import { cuttingBoxes } from '../ink/pattern-ink.ts';
import { textLine } from '../type/lettering.ts';
import { guideLetters } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';

/** Where card and film are cut: round the content, with round corners that catch no thread. */
export interface Cutting {
  readonly content: Box;
  readonly card: Box;
  readonly film: Box;
}

/**
 * Cutting lines with roomy borders, or with narrow ones where only those keep the pattern on fewer sheets.
 * That film is cut a little larger than the card is common practice, no source; by how much is our default.
 */
export function chooseCutting(content: Box, sheetsFor: (content: Box) => number): Cutting {
  const roomy = { content, ...cuttingBoxes(content, 10, 7) };
  const narrow = { content, ...cuttingBoxes(content, 5, 4) };
  return sheetsFor(narrow.film) < sheetsFor(roomy.film) ? narrow : roomy;
}

export function cuttingMarks(
  typeface: Typeface,
  { content, card, film }: Cutting,
  holes: readonly Point[],
): InkMark[] {
  const placer = new LabelPlacer(new PointIndex(holes), 0.5);
  const line = (box: Box, dash: readonly number[]): InkMark => ({
    kind: 'stroke',
    role: 'outline',
    path: parallelOf(content, content.left - box.left),
    width: 0.2,
    colour: CUT,
    dash,
  });
  const words = (text: string, { left, right, bottom }: Box): InkMark[] => {
    const line = textLine(
      typeface,
      text,
      { ...guideLetters, colour: CUT },
      { at: { x: (left + right) / 2, y: bottom - 0.8 }, align: 'middle', role: 'outline' },
    );
    const placed = placer.place(line);
    return placed ? [placed] : [];
  };
  return [
    line(film, [4, 1.5, 0.6, 1.5]),
    line(card, [3, 1.5]),
    ...words('cut the film here', film),
    ...words('cut the card here', card),
  ];
}

const CUT: Colour = '#3d3d3d';
