import type { Point } from './point.ts';

/**
 * A linear map with a shift: `x' = a x + c y + e`, `y' = b x + d y + f`
 * (the same six letters, in the same order, as the `matrix()` of the SVG recommendation).
 */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const identity: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export const translation = (x: number, y: number): Affine => ({ a: 1, b: 0, c: 0, d: 1, e: x, f: y });

export const scaling = (x: number, y: number = x): Affine => ({ a: x, b: 0, c: 0, d: y, e: 0, f: 0 });

/** A turn by `angle` radians, clockwise as seen on a sheet whose y runs down. */
export const rotation = (angle: number): Affine => {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
};

/** The map that does `inner` first and then `outer`. */
export const compose = (outer: Affine, inner: Affine): Affine => ({
  a: outer.a * inner.a + outer.c * inner.b,
  b: outer.b * inner.a + outer.d * inner.b,
  c: outer.a * inner.c + outer.c * inner.d,
  d: outer.b * inner.c + outer.d * inner.d,
  e: outer.a * inner.e + outer.c * inner.f + outer.e,
  f: outer.b * inner.e + outer.d * inner.f + outer.f,
});

export const applyAffine = (map: Affine, { x, y }: Point): Point => ({
  x: map.a * x + map.c * y + map.e,
  y: map.b * x + map.d * y + map.f,
});

export const determinant = (map: Affine): number => map.a * map.d - map.b * map.c;

/** The map that undoes `map`. Throws where `map` flattens the plane (determinant 0). */
export function invert(map: Affine): Affine {
  const det = determinant(map);
  if (det === 0 || !Number.isFinite(det)) throw new RangeError(`invert: no inverse, determinant is ${det}`);
  return {
    a: map.d / det,
    b: -map.b / det,
    c: -map.c / det,
    d: map.a / det,
    e: (map.c * map.f - map.d * map.e) / det,
    f: (map.b * map.e - map.a * map.f) / det,
  };
}
