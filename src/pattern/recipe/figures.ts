import { z } from 'zod';

/** Kinds of figure that recipes are made of. */

/**
 * The figures that are millimetres: they grow with the pattern when it is scaled, while angles, counts and shares stay.
 * A figure made from one of these (`length.max(20)`, `length.describe(…)`) is one as well.
 */
export const millimetres = z.registry<{ readonly unit: 'mm' }>();

/** A length that pins could stand apart, mm. */
export const length = z.number().min(0.1).max(10_000).register(millimetres, { unit: 'mm' });

/** How far something lies to one side or the other, mm. */
export const coordinate = z.number().min(-10_000).max(10_000).register(millimetres, { unit: 'mm' });

/** An angle at the door: degrees. */
export const angle = (least: number, most: number) => z.number().min(least).max(most);

export const count = (least: number, most: number) => z.int().min(least).max(most);

export const place = z.strictObject({
  x: coordinate,
  y: coordinate,
});

/** '#rrggbb' in lower case. */
export const tint = z.string().regex(/^#[0-9a-f]{6}$/);
