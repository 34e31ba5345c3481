import type { Point } from '#base/geometry/point.ts';
import { mirrorPattern } from '#craft/draft/arrange/index.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern } from '#pattern/pins.ts';

/** The pattern as it is looked at: from the front, or with left and right changed over. */
export interface Seen {
  readonly pattern: Pattern;
  readonly place: (point: Point) => Point;
}

export function seenFrom(side: 'front' | 'back', pattern: Pattern): Seen {
  if (side === 'front') return { pattern, place: (point) => point };
  const { left, right } = boxOfPattern(pattern);
  const middle = { x: (left + right) / 2, y: 0 };
  return {
    pattern: mirrorPattern(pattern, { through: middle, direction: { x: 0, y: 1 } }),
    place: ({ x, y }) => ({ x: left + right - x, y }),
  };
}
