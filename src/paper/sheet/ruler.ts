import type { Point } from '#base/geometry/point.ts';
import type { InkMark, Stroke } from '../drawing/mark.ts';
import { polyline, segment } from '../drawing/path.ts';
import { textLine } from '../type/lettering.ts';
import { ink, smallLetters } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';

/** How far a ruler with its ticks and words reaches across its own line, mm. */
export const RULER_DEPTH = 6.4;
export const RULER_LENGTH = 100;

const PEN = 0.2;

/**
 * A ruler of 100 mm from the middle of its first tick to the middle of its last, to be measured before pricking.
 * `at` is where it begins; ticks point to the side where its words are.
 */
export function ruler(typeface: Typeface, at: Point, axis: 'across' | 'down'): InkMark[] {
  const across = axis === 'across';
  const place = (along: number, side: number): Point =>
    across ? { x: at.x + along, y: at.y - side } : { x: at.x + side, y: at.y + along };
  const stroke = (path: Stroke['path']): Stroke => ({
    kind: 'stroke',
    role: 'guide',
    path,
    width: PEN,
    colour: ink,
  });
  const marks: InkMark[] = [];
  // End ticks reach to both sides, so that they are found at once when a real ruler is laid along.
  marks.push(
    stroke(polyline([place(0, 3.2), place(0, 0), place(RULER_LENGTH, 0), place(RULER_LENGTH, 3.2)])),
  );
  for (let along = 5; along < RULER_LENGTH; along += 5) {
    marks.push(stroke(segment(place(along, 0), place(along, along % 10 === 0 ? 2.2 : 1.3))));
  }
  marks.push(
    textLine(typeface, WORDS[axis], smallLetters, {
      at: place(RULER_LENGTH / 2, 3.6),
      align: 'middle',
      turn: across ? 0 : Math.PI / 2,
      role: 'guide',
    }),
  );
  return marks;
}

const WORDS = {
  across: 'measure me: 100 mm across, left edge to left edge',
  down: 'measure me: 100 mm down',
} as const;
