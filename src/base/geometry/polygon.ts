import type { Point } from './point.ts';

/** Whether a point lies inside a closed outline (even-odd rule); a point on the outline may count either way. */
export function isInside(outline: readonly Point[], { x, y }: Point): boolean {
  let inside = false;
  let last = outline.at(-1);
  for (const corner of outline) {
    if (last !== undefined && corner.y > y !== last.y > y) {
      const crossing = corner.x + ((y - corner.y) / (last.y - corner.y)) * (last.x - corner.x);
      if (x < crossing) inside = !inside;
    }
    last = corner;
  }
  return inside;
}
