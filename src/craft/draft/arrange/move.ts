import { type Affine, applyAffine, compose, determinant, translation } from '#base/geometry/affine.ts';
import { type Point, unit } from '#base/geometry/point.ts';
import { mapAnchors } from '#pattern/anchors.ts';
import type { Anchor, Mark, Pattern } from '#pattern/pattern.ts';

/** A line to mirror in: through a place, along a direction of any length but zero. */
export interface MirrorLine {
  readonly through: Point;
  readonly direction: Point;
}

/**
 * The pattern as a mirror shows it. Twice in the same line gives every place back within 1e-9 mm. Throws where the
 * line has no direction.
 */
export function mirrorPattern(pattern: Pattern, { through, direction }: MirrorLine): Pattern {
  const { x, y } = unit(direction);
  if (!(Math.hypot(x, y) > 0)) throw new RangeError('mirrorPattern: the line has no direction');
  // a reflection in a line at angle t has the matrix (cos 2t, sin 2t; sin 2t, -cos 2t)
  const [cos, sin] = [x * x - y * y, 2 * x * y];
  return moved(pattern, about(through, { a: cos, b: sin, c: sin, d: -cos, e: 0, f: 0 }));
}

/** The pattern turned by `angle` radians, clockwise on the sheet, about a place. Quarter turns are exact. */
export function turnPattern(pattern: Pattern, angle: number, centre: Point): Pattern {
  const [cos, sin] = [withoutDust(Math.cos(angle)), withoutDust(Math.sin(angle))];
  return moved(pattern, about(centre, { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 }));
}

/** The pattern pushed by a step. */
export const shiftPattern = (pattern: Pattern, { x, y }: Point): Pattern => moved(pattern, translation(x, y));

/**
 * Every place, step and the paper's picture carried by a map. A sheet's frame stays with the sheet, so that a pattern
 * that is moved has none; nor does it keep a recipe, which would put its pins where they were.
 */
export function moved(pattern: Pattern, map: Affine): Pattern {
  const { sheet: _, recipe: __, ...kept } = pattern;
  const carry = (anchor: Anchor): Anchor => ('pin' in anchor ? anchor : applyAffine(map, anchor));
  const mirrors = determinant(map) < 0;
  return {
    ...kept,
    pins: pattern.pins.map((pin) => ({ ...pin, ...applyAffine(map, pin) })),
    marks: pattern.marks.map((mark) => mapAnchors(mirrors ? otherSide(mark) : mark, carry)),
    areas: pattern.areas.map((area) => ({ ...area, outline: area.outline.map(carry) })),
    ...(pattern.repeat && {
      repeat: { ...pattern.repeat, step: applyAffine({ ...map, e: 0, f: 0 }, pattern.repeat.step) },
    }),
    ...(pattern.paper && { paper: movedPaper(pattern.paper, map) }),
  };
}

function movedPaper(paper: NonNullable<Pattern['paper']>, map: Affine): NonNullable<Pattern['paper']> {
  const stood = Object.entries(paper.stood ?? {}).map(([id, place]) => [id, applyAffine(map, place)]);
  return {
    ...paper,
    toPattern: compose(map, paper.toPattern),
    ...(paper.stood && { stood: Object.fromEntries(stood) }),
  };
}

const otherSide = (mark: Mark): Mark =>
  mark.kind === 'picot' && mark.side !== undefined
    ? { ...mark, side: mark.side === 'left' ? 'right' : 'left' }
    : mark;

const about = ({ x, y }: Point, map: Affine): Affine =>
  compose(translation(x, y), compose(map, translation(-x, -y)));

/** Math.cos of a quarter turn is 6e-17 rather than 0. */
const withoutDust = (value: number): number => (Math.abs(value) < 1e-15 ? 0 : value);
