import type { Point } from './point.ts';

/** An upright rectangle in millimetres; `empty` boxes have `left > right`. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const emptyBox: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };

export const isEmptyBox = (box: Box): boolean => box.left > box.right || box.top > box.bottom;

export const widthOf = (box: Box): number => (isEmptyBox(box) ? 0 : box.right - box.left);

export const heightOf = (box: Box): number => (isEmptyBox(box) ? 0 : box.bottom - box.top);

/** The smallest box round all points; empty where there are none. */
export function boxOf(points: Iterable<Point>): Box {
  let { left, top, right, bottom } = emptyBox;
  for (const { x, y } of points) {
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < top) top = y;
    if (y > bottom) bottom = y;
  }
  return { left, top, right, bottom };
}

export const joinBoxes = (a: Box, b: Box): Box => ({
  left: Math.min(a.left, b.left),
  top: Math.min(a.top, b.top),
  right: Math.max(a.right, b.right),
  bottom: Math.max(a.bottom, b.bottom),
});

/** The box with every side moved outward by `margin` millimetres (inward where negative). */
export const growBox = (box: Box, margin: number): Box => ({
  left: box.left - margin,
  top: box.top - margin,
  right: box.right + margin,
  bottom: box.bottom + margin,
});

export const boxHolds = (box: Box, { x, y }: Point): boolean =>
  x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
