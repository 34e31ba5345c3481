/** A place on the sheet, or a step between two places, in millimetres: x to the right, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A place in a picture, in pixels: column to the right, row down, the centre of the top-left pixel at (0, 0).
 * The field names differ from `Point` on purpose, so that pixels and millimetres cannot be mixed by accident.
 */
export interface PixelPoint {
  readonly column: number;
  readonly row: number;
}

export const add = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });

export const subtract = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });

export const scale = (a: Point, factor: number): Point => ({ x: a.x * factor, y: a.y * factor });

export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

/** The z component of the cross product: positive where `b` lies clockwise of `a` on a sheet whose y runs down. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

export const length = (a: Point): number => Math.hypot(a.x, a.y);

export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** The point a fraction `t` of the way from `a` (0) to `b` (1). */
export const between = (a: Point, b: Point, t: number): Point => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
});

/** The same direction with length 1; a zero step stays zero. */
export const unit = (a: Point): Point => {
  const size = length(a);
  return size === 0 ? a : scale(a, 1 / size);
};
